package offtape.report.locate;

import java.util.List;
import java.util.Locale;
import offtape.core.audio.AudioSource;
import offtape.core.fault.UnusableInputException;
import offtape.core.programme.Cue;
import offtape.core.programme.Programme;

/** Why a programme was not found in a recording, in words. */
final class NotFound {

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
                    String.format(
                            Locale.ROOT,
                            "%s is cut short beyond use: it lasts %.1f s, and the programme %.1f s."
                                    + " Record the whole programme again, from before its first marker"
                                    + " to after its last.",
                            recording.name(),
                            seconds,
                            needed));
        }
        if (isSilent()) {
            return new UnusableInputException(
                    recording.name()
                            + " is silent from beginning to end. Check cables, input and record"
                            + " level, then record again.");
        }
        return new UnusableInputException(
                "The programme was not found in "
                        + recording.name()
                        + ". Check that this is the return of the programme in the folder given with"
                        + " --programme, that its level is not too low, and that the tape ran within"
                        + " 20 % of its speed or at half or twice that.");
    }

    /**
     * The programme is there, but its time does not go with its pitch.
     *
     * @param longer by how much it lasts longer than its pitch says, as a share
     */
    UnusableInputException stretched(double longer) {
        return new UnusableInputException(
                String.format(
                        Locale.ROOT,
                        "%s lasts about %.1f %% %s than the pitch of its tones says, evenly from beginning to"
                                + " end: it was stretched in time, as a workstation does that fits"
                                + " clips to a tempo. Switch stretching and tempo following off and"
                                + " export the recording again.",
                        recording.name(),
                        100 * Math.abs(longer),
                        longer > 0 ? "longer" : "shorter"));
    }

    /** The programme is there from its end to its beginning. */
    UnusableInputException backwards() {
        return new UnusableInputException(
                recording.name()
                        + " holds the programme backwards. Turn the reels over or play the other"
                        + " tracks, or leave out the reversal in the workstation, and record again.");
    }

    /** The colour is the programme's, yet its markers are not where they should be. */
    UnusableInputException withoutMarkers(CoarseSearch.Match found, List<Anchor> markers) {
        SpeedMistake mistake =
                SpeedMistake.of(1 / found.stretch(), programme.sheet().tapeSpeedMmPerS());
        return mistake.isWrongSpeed()
                ? new UnusableInputException(
                        recording.name()
                                + " sounds like the programme, but none of its markers is in it. "
                                + mistake.sentence())
                : noMarker(markers);
    }

    private UnusableInputException noMarker(List<Anchor> markers) {
        if (programme.sheet().cues(Cue.Marker.class).findAny().isEmpty()) {
            return new UnusableInputException(
                    "The cue sheet names no marker, so the programme cannot be placed. Write the"
                            + " programme again with \"offtape prepare\".");
        }
        return new UnusableInputException(
                recording.name()
                        + (markers.isEmpty()
                                ? " is cut short: neither marker of the programme is in it. Record"
                                        + " from before the first marker to after the last."
                                : " sounds like the programme, but none of its markers is in it."
                                        + " Record the whole programme again, from before its first"
                                        + " marker to after its last."));
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
