package offtape.report.locate;

import java.util.List;
import offtape.core.audio.AudioSource;
import offtape.core.fault.UnusableInputException;
import offtape.core.programme.Cue;
import offtape.core.programme.Programme;
import offtape.core.text.Sentences;

/** Why a programme was not found in a recording, in words. */
final class NotFound {

    private static final Sentences SAID = Sentences.near(NotFound.class);

    /** Less than this share of the programme's length is too little to be known again. */
    private static final double SHORT = 0.4;

    /** Peak under which a recording is taken for silent, in full-scale units: -90 dBFS. */
    private static final double SILENT = 3.2e-5;

    private static final int BLOCK = 1 << 16;

    private final Programme programme;
    private final AudioSource recording;

    NotFound(Programme programme, AudioSource recording) {
        this.programme = programme;
        this.recording = recording;
    }

    /** Nothing in the recording has the programme's colour. */
    UnusableInputException refusal() {
        double seconds = (double) recording.frames() / recording.sampleRateHz();
        double needed = programme.sheet().seconds(programme.sheet().frames());
        if (seconds < SHORT * needed) {
            return new UnusableInputException(
                    SAID.say("cut-short-beyond-use", recording.name(), seconds, needed)
                            + " "
                            + SAID.say("record-whole"));
        }
        if (isSilent()) {
            return new UnusableInputException(SAID.say("silent", recording.name()));
        }
        return new UnusableInputException(SAID.say("not-found", recording.name()));
    }

    /**
     * The programme is there, but its time does not go with its pitch.
     *
     * @param longer by how much it lasts longer than its pitch says, as a share
     */
    UnusableInputException stretched(double longer) {
        return new UnusableInputException(
                SAID.say(
                        longer > 0 ? "stretched-longer" : "stretched-shorter",
                        recording.name(),
                        100 * Math.abs(longer)));
    }

    /** The programme is there from its end to its beginning. */
    UnusableInputException backwards() {
        return new UnusableInputException(SAID.say("backwards", recording.name()));
    }

    /** The colour is the programme's, yet its markers are not where they should be. */
    UnusableInputException withoutMarkers(CoarseSearch.Match found, List<Anchor> markers) {
        SpeedMistake mistake =
                SpeedMistake.of(1 / found.stretch(), programme.sheet().tapeSpeedMmPerS());
        return mistake.isWrongSpeed()
                ? new UnusableInputException(
                        SAID.say("no-markers", recording.name()) + " " + mistake.sentence())
                : noMarker(markers);
    }

    private UnusableInputException noMarker(List<Anchor> markers) {
        if (programme.sheet().cues(Cue.Marker.class).findAny().isEmpty()) {
            return new UnusableInputException(SAID.say("sheet-without-markers"));
        }
        return new UnusableInputException(
                markers.isEmpty()
                        ? SAID.say("cut-short", recording.name())
                        : SAID.say("no-markers", recording.name())
                                + " "
                                + SAID.say("record-whole"));
    }

    private boolean isSilent() {
        for (long n = 0; n < recording.frames(); n += BLOCK) {
            int count = (int) Math.min(BLOCK, recording.frames() - n);
            for (double[] channel : recording.read(n, count)) {
                for (double x : channel) {
                    if (Math.abs(x) > SILENT) {
                        return false;
                    }
                }
            }
        }
        return true;
    }
}
