package offtape.report.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import offtape.core.programme.Cue;
import offtape.report.locate.Location;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.locate.SpeedMistake;
import offtape.report.locate.Take;
import offtape.report.result.HealthNote;

/** What the reader should know about where in the recording the programme lies, and how fast. */
final class PlaceNotes {

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
                String.format(
                        Locale.ROOT,
                        "The recording holds the programme %d times: %s. The one from %.1f s was"
                                + " measured: the last whole one, or the longest if none is whole.",
                        takes.size(),
                        places,
                        Math.max(0, location.delaySeconds())));
    }

    private static String place(Take take) {
        return String.format(
                Locale.ROOT,
                take.whole() ? "from %.1f s whole" : "from %.1f s to %.1f s in part",
                Math.max(0, take.fromSeconds()),
                take.toSeconds());
    }

    private void whole() {
        if (!location.startMarkerFound()) {
            add(
                    "warning",
                    "no-start-marker",
                    "The marker at the start of the programme was not heard, so the delay is less"
                            + " sure. Start recording before the programme.");
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
                    "The recording does not hold the whole programme. "
                            + ret.whyMissing(missing.get(0))
                            + " Missing: "
                            + names
                            + "; what they would tell is unknown. Record from before the first marker"
                            + " to after the last.");
        } else if (!location.endMarkerFound()) {
            add("note", "no-end-marker", "The marker at the end of the programme was not heard.");
        }
    }
}
