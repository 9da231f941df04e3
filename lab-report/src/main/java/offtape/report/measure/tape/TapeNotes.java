package offtape.report.measure.tape;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import offtape.core.audio.AudioSource;
import offtape.core.standard.TimeConstants;
import offtape.core.tape.ListedTone;

/** What the reader of a tape's figures should know. */
final class TapeNotes {

    private static final double FULL_SCALE_DB = -0.1;
    private static final double MENTIONED_S = 0.2;

    /** Below this a full-track tape reads high on narrower tracks; common practice, no source. */
    private static final double FRINGING_HZ = 500;

    private static final double SAME_DB = 1e-9;

    private final AudioSource recording;
    private final TapeQuestion question;
    private final Naming naming;
    private final PairDelay pair;

    TapeNotes(AudioSource recording, TapeQuestion question, Naming naming, PairDelay pair) {
        this.recording = recording;
        this.question = question;
        this.naming = naming;
        this.pair = pair;
    }

    /** Notes on the recording, its tones and its channels. */
    List<String> all() {
        List<String> notes = new ArrayList<>();
        if (naming.tones().size() == 1) {
            notes.add(
                    "The recording holds one steady tone only, so there is no series and no response;"
                            + " the other figures are those of this tone.");
        }
        addTones(notes);
        addChannels(notes);
        boolean isFromTape =
                question.speedToneHz() != null
                        || naming.tones().stream().anyMatch(t -> t.isFor(ListedTone.Purpose.SPEED));
        boolean isStated = question.list() != null && question.list().accuracyPercent() != null;
        if (isFromTape && !isStated) {
            notes.add(
                    "How accurate the tape's own frequencies are was not stated, so the uncertainty of"
                            + " the speed holds the reading only.");
        }
        return notes;
    }

    private void addTones(List<String> notes) {
        String spoilt = which(t -> t.heard().leftOutSeconds() > MENTIONED_S);
        if (!spoilt.isEmpty()) {
            notes.add(
                    "The level jumps in places (dropouts, clicks); these are left out"
                            + " of the levels of: "
                            + spoilt
                            + ".");
        }
        String loud = which(t -> t.heard().loudestDb() > FULL_SCALE_DB);
        if (!loud.isEmpty()) {
            notes.add(
                    "At full scale, and so perhaps clipped: "
                            + loud
                            + ". Record at a lower level.");
        }
    }

    private void addChannels(List<String> notes) {
        if (recording.channels() < 2) {
            notes.add("The recording has one channel only, which is reported as left.");
            return;
        }
        if (naming.tones().stream().allMatch(TapeNotes::isSame)) {
            notes.add(
                    "Both channels hold the same tones exactly, as when a mono recording is exported as"
                            + " stereo: figures that compare the channels are those of the export.");
        } else if (pair.isInverted()) {
            notes.add(
                    "The channels are of opposite polarity; the delay between them is given as if one"
                            + " of them were turned over.");
        }
        for (int c = 0; c < 2; c++) {
            int channel = c;
            if (naming.tones().stream().noneMatch(t -> t.heard().levels().get(channel).isKnown())) {
                notes.add("No tone is heard on the " + (c == 0 ? "left" : "right") + " channel.");
            }
        }
    }

    private static boolean isSame(NamedTone tone) {
        return tone.heard().difference().isKnown()
                && Math.abs(tone.heard().difference().value()) < SAME_DB
                && Math.abs(tone.heard().phase().radians()) < SAME_DB;
    }

    private String which(Predicate<NamedTone> chosen) {
        return naming.tones().stream()
                .filter(chosen)
                .map(t -> String.format(Locale.ROOT, "tone %d (%.0f Hz)", t.number(), t.aboutHz()))
                .collect(Collectors.joining(", "));
    }

    /** Notes on the response. */
    static List<String> onResponse(ResponseTones response, TapeQuestion question) {
        List<String> notes = new ArrayList<>();
        notes.add(response.note());
        if (response.tones().isEmpty()) {
            return notes;
        }
        equalisation(question).forEach(notes::add);
        if (response.tones().stream().anyMatch(t -> t.aboutHz() < FRINGING_HZ)) {
            notes.add(
                    "A tape recorded over its full width reads too high in the bass on heads with"
                            + " narrower tracks (fringing). This is not corrected: keep to the sheet of"
                            + " the tape.");
        }
        return notes;
    }

    private static List<String> equalisation(TapeQuestion question) {
        TimeConstants tape = question.tapeConstants();
        TimeConstants machine = question.machine();
        if (tape == null) {
            return List.of(
                    "What the tape was recorded to was not stated (--equalisation): the response holds"
                            + " for a machine set to the tape's own time constants.");
        }
        if (machine == null || machine.equals(tape)) {
            return List.of(
                    "The response holds for a machine set to the tape's time constants, "
                            + tape.words()
                            + ".");
        }
        return List.of(
                "The tape was recorded to "
                        + tape.words()
                        + " and the machine is set to "
                        + machine.words()
                        + ": the corrected response is what a tape recorded to the machine's constants"
                        + " would read (IEC 60094-1).");
    }
}
