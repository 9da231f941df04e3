package offtape.core.realign;

import java.util.List;
import offtape.core.audio.AudioSource;

/**
 * Whether a return is of its original at all: how much of it the original explains at the place
 * that was found is set against how much it seems to explain at places where it cannot lie, looked
 * at in just the same way. So what chance, a common beat or a common key makes alike is taken from
 * the very sounds in question.
 *
 * @param here likeness at the place found
 * @param elsewhere mean likeness at the wrong places
 * @param scatter standard deviation of that, at least a tenth of the mean
 */
record Kinship(double here, double elsewhere, double scatter) {

    /** Wrong places, seconds off: no two are multiples of a common beat. */
    private static final double[] OFF_S = {-0.863, 0.317, 1.237};

    private static final double LOOKED_AT_S = 12;

    /**
     * Of unrelated music nothing explained a third of this (study of pairs); noise as loud as it,
     * twice.
     */
    private static final double LEAST = 0.05;

    /** What chance leaves even where nothing at all is alike elsewhere, as between strokes. */
    private static final double LEAST_SCATTER = 0.002;

    /** Standard deviations by which the right place stands out. */
    private static final double COVERAGE = 6;

    static Kinship of(AudioSource original, AudioSource returned, Course course, LevelTrace trace) {
        Tracker tracker = new Tracker(original, returned, stretches(original, trace));
        double here = tracker.likeness(course);
        if (here <= LEAST) {
            return new Kinship(here, here, 0);
        }
        double sum = 0;
        double squares = 0;
        for (double off : OFF_S) {
            double there = tracker.likeness(course.later(off * original.sampleRateHz()));
            sum += there;
            squares += there * there;
        }
        double mean = sum / OFF_S.length;
        double variance = Math.max(0, squares / OFF_S.length - mean * mean);
        double scatter = Math.sqrt(variance * OFF_S.length / (OFF_S.length - 1));
        return new Kinship(here, mean, Math.max(LEAST_SCATTER, Math.max(0.1 * mean, scatter)));
    }

    /** The loudest part of the original that is long enough. */
    private static List<Stretch> stretches(AudioSource original, LevelTrace trace) {
        int some = (int) (LOOKED_AT_S * LevelTrace.RATE_HZ);
        int best = 0;
        double most = -1;
        for (int from = 0; from < Math.max(1, trace.length() - some); from += LevelTrace.RATE_HZ) {
            double energy = trace.energy(from, from + some);
            best = energy > most ? from : best;
            most = Math.max(energy, most);
        }
        long begin = (long) best * original.sampleRateHz() / LevelTrace.RATE_HZ;
        long end = begin + Math.round(LOOKED_AT_S * original.sampleRateHz());
        return List.of(new Stretch(begin, Math.min(original.frames(), end)));
    }

    /** By how many standard deviations the place found stands out. */
    double clearness() {
        return scatter > 0 ? (here - elsewhere) / scatter : 0;
    }

    /** Whether the return is of the original beyond doubt. */
    boolean isKin() {
        return here > LEAST && clearness() > COVERAGE;
    }
}
