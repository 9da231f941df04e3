package offtape.report.locate;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.DoubleStream;
import offtape.core.audio.AudioSource;
import offtape.core.fault.UnusableInputException;
import offtape.core.programme.Cue;
import offtape.core.programme.Programme;

/** Why a programme was not found in a recording, in words. */
final class NotFound {

    /** Mistakes of tape speed and of sample rate: how many times as long the programme takes. */
    private static final double[] MISTAKES = {48_000 / 44_100.0, 44_100 / 48_000.0, 0.5, 2};

    /** Less than this share of the programme's length is too little to be known again. */
    private static final double SHORT = 0.4;

    /** Peak under which a recording is taken for silent, in full-scale units: -90 dBFS. */
    private static final double SILENT = 3.2e-5;

    private static final int BLOCK = 1 << 16;

    private final Programme programme;
    private final AudioSource recording;
    private final CoarseSearch search;

    NotFound(Programme programme, AudioSource recording, CoarseSearch search) {
        this.programme = programme;
        this.recording = recording;
        this.search = search;
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
        Optional<UnusableInputException> otherSpeed = atOtherSpeed(Locator.LIKE);
        if (otherSpeed.isPresent()) {
            return otherSpeed.get();
        }
        return new UnusableInputException(
                "The programme was not found in "
                        + recording.name()
                        + ". Check that this is the return of the programme in the folder given with"
                        + " --programme, that its level is not too low, and that the tape ran within"
                        + " 3 % of its speed.");
    }

    /** The colour is the programme's, yet its markers are not where they should be. */
    UnusableInputException withoutMarkers(CoarseSearch.Match found, List<Anchor> markers) {
        return atOtherSpeed(found.likeness()).orElseGet(() -> noMarker(markers));
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

    private Optional<UnusableInputException> atOtherSpeed(double least) {
        return DoubleStream.of(MISTAKES)
                .mapToObj(stretch -> search.best(stretch, Locator.SPEED_RANGE))
                .max(Comparator.comparingDouble(CoarseSearch.Match::likeness))
                .filter(match -> match.likeness() >= least)
                .map(match -> otherSpeed(recording, match.stretch()));
    }

    /** The programme is there, at a speed that is a mistake. */
    static UnusableInputException otherSpeed(AudioSource recording, double stretch) {
        return new UnusableInputException(
                String.format(
                        Locale.ROOT,
                        "%s holds the programme %.2f times as fast as it was made: a wrong tape speed,"
                                + " or a file whose header names the wrong sample rate. Set the machine"
                                + " or the file right and record again.",
                        recording.name(),
                        1 / stretch));
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
