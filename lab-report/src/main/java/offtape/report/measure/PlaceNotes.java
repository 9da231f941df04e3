package offtape.report.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import offtape.core.programme.Cue;
import offtape.core.text.Sentences;
import offtape.report.locate.Location;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.locate.SpeedMistake;
import offtape.report.locate.Take;
import offtape.report.result.HealthNote;

/** What the reader should know about where in the recording the programme lies, and how fast. */
final class PlaceNotes {

    private static final Sentences SAID = Sentences.near(PlaceNotes.class);

    private final ProgrammeReturn ret;
    private final Location location;
    private final List<HealthNote> notes = new ArrayList<>();

    PlaceNotes(ProgrammeReturn ret) {
        this.ret = ret;
        this.location = ret.location();
    }

    /** All notes. */
    List<HealthNote> notes() {
        speed();
        takes();
        whole();
        return notes;
    }

    private void add(String severity, String code, String message) {
        notes.add(new HealthNote(severity, code, message));
    }

    private void speed() {
        double ratio = ret.speedRatio(0, ret.sheet().frames());
        SpeedMistake mistake = SpeedMistake.of(ratio, ret.sheet().tapeSpeedMmPerS());
        if (mistake.code() != null) {
            String severity = mistake.isWrongSpeed() ? "blocking" : "warning";
            add(severity, mistake.code(), mistake.sentence());
        }
    }

    private void takes() {
        List<Take> takes = location.takes();
        if (takes.isEmpty()) {
            return;
        }
        String places = takes.stream().map(PlaceNotes::place).collect(Collectors.joining(", "));
        add(
                "note",
                "several-takes",
                SAID.say(
                        "several-takes",
                        takes.size(),
                        places,
                        Math.max(0, location.delaySeconds())));
    }

    private static String place(Take take) {
        double from = Math.max(0, take.fromSeconds());
        return take.whole()
                ? SAID.say("take-whole", from)
                : SAID.say("take-part", from, take.toSeconds());
    }

    private void whole() {
        if (!location.startMarkerFound()) {
            add("warning", "no-start-marker", SAID.say("no-start-marker"));
        }
        List<Cue> missing =
                ret.sheet().cues().stream()
                        .filter(c -> !location.covers(c, ret.sheet().sampleRateHz()))
                        .toList();
        if (!missing.isEmpty()) {
            String names =
                    missing.stream().map(Cue::id).collect(Collectors.joining("\", \"", "\"", "\""));
            add(
                    "warning",
                    "incomplete",
                    String.join(
                            " ",
                            SAID.say("incomplete"),
                            ret.whyMissing(missing.get(0)),
                            SAID.say("missing", names)));
        } else if (!location.endMarkerFound()) {
            add("note", "no-end-marker", SAID.say("no-end-marker"));
        }
    }
}
