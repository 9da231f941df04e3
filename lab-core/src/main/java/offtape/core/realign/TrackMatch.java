package offtape.core.realign;

import java.util.ArrayList;
import java.util.List;
import offtape.core.align.Alignment;
import offtape.core.audio.AudioSource;
import offtape.core.fault.UnusableInputException;

/** Finds a track in its return by its sound alone, without marks. */
public final class TrackMatch {

    /** How many standard uncertainties a difference may have and still be none. */
    private static final double COVERAGE = 3;

    private static final double LEAST_DOUBT_FRAMES = 5e-4;
    private static final double LEAST_DOUBT_OF_GAIN = 1e-5;
    private static final double STRETCH_S = 60;

    private TrackMatch() {}

    /**
     * Finds it.
     *
     * @param original what was sent
     * @param returned what came back, of the same sample rate, with as many channels, or any number
     *     if the original has one
     * @return the mean delay, the mean speed and the gains of the path; differences from a path
     *     that changes nothing are none where they are below three standard uncertainties
     * @throws UnusableInputException if it is not found
     */
    public static Alignment find(AudioSource original, AudioSource returned) {
        Tracked tracked = track(original, returned);
        return alignment(tracked);
    }

    static Tracked track(AudioSource original, AudioSource returned) {
        List<Place> places =
                new PlaceSearch(LevelTrace.of(original), LevelTrace.of(returned)).find();
        if (places.isEmpty()) {
            throw new UnusableInputException(
                    original.name() + " is not found in " + returned.name() + ".");
        }
        Place place = places.get(0);
        Windows windows = new Windows(original, returned);
        Course rough = Course.line(place.start() * original.sampleRateHz(), place.step());
        Tracked tracked = new Tracker(windows, all(windows)).follow(rough);
        if (tracked == null) {
            throw new UnusableInputException(
                    original.name() + " is not found in " + returned.name() + ".");
        }
        return tracked;
    }

    private static List<Stretch> all(Windows windows) {
        int some = (int) (STRETCH_S * windows.sampleRateHz() / windows.hop());
        List<Stretch> stretches = new ArrayList<>();
        for (int from = 0; from < windows.count(); from += some) {
            stretches.add(new Stretch(from, Math.min(windows.count(), from + some)));
        }
        return stretches;
    }

    static Alignment alignment(Tracked tracked) {
        StraightLine line = tracked.line();
        double doubt =
                Math.max(LEAST_DOUBT_FRAMES, Math.hypot(line.doubt(), tracked.slope().doubt()));
        boolean isSteady =
                Math.abs(line.step() - 1)
                        < COVERAGE
                                * Math.max(
                                        line.stepDoubt(),
                                        LEAST_DOUBT_FRAMES / Math.max(1, line.middle()));
        double step = isSteady ? 1 : line.step();
        double middle = line.start() + line.step() * line.middle();
        double start = middle - step * line.middle();
        boolean isWhole = isSteady && Math.abs(start - Math.rint(start)) < COVERAGE * doubt;
        List<Double> gains = tracked.path().stream().map(TrackMatch::gain).toList();
        return new Alignment(isWhole ? Math.rint(start) : start, step, gains, 0, false);
    }

    private static double gain(Transfer t) {
        double sum = 0;
        double size = 0;
        double sign = 0;
        for (int k = 0; k < t.re().length; k++) {
            double w = t.coherence()[k] / Math.max(1e-12, 1 - t.coherence()[k]);
            sum += w * t.power(k);
            size += w;
            sign += w * t.re()[k];
        }
        double gain = size > 0 ? Math.sqrt(sum / size) : 1;
        double told = Math.abs(gain - 1) < COVERAGE * LEAST_DOUBT_OF_GAIN ? 1 : gain;
        return sign < 0 ? -told : told;
    }
}
