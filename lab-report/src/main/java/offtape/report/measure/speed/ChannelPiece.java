package offtape.report.measure.speed;

import java.util.Arrays;
import java.util.function.IntToDoubleFunction;
import offtape.core.dsp.Baseband;
import offtape.core.dsp.Differentiator;

/**
 * A piece of one channel: the slope of the tone's phase, and where it can be trusted. It cannot
 * where the tone drowns in the noise (a deep dropout), nor where phase and level jump together (a
 * click); changes of tape speed leave the level alone.
 */
final class ChannelPiece {

    private static final int HALF = Differentiator.HALF;

    /** No steady tone changes its level by so much from one piece to the next (−12 dB). */
    private static final double MUCH = 0.25;

    /**
     * Share of a piece that may lie above what counts as its level, so that it may be mostly gone.
     */
    private static final double LOUDEST = 0.1;

    /** A click rises this many times above the median of its kind, in phase and in level. */
    private static final double STRUCK = 15;

    /** Least jerk of the level in a click, re the level. */
    private static final double LEAST_JERK = 0.01;

    /** A click is as long as the band is narrow; half of that, in samples. */
    private static final int REACH = 6;

    private final double[] slope;
    private final boolean[] spoilt;
    private final double level;

    private ChannelPiece(double[] slope, boolean[] spoilt, double level) {
        this.slope = slope;
        this.spoilt = spoilt;
        this.level = level;
    }

    /**
     * Looks through a piece; the result lacks {@link Differentiator#HALF} samples at either end.
     *
     * @param levelBefore level of the piece before it, 0 for the first
     * @param gone share of its level below which the tone drowns in noise
     */
    static ChannelPiece of(Baseband base, double levelBefore, double gone) {
        double[] slope = Differentiator.apply(base.unwrappedPhase(), base.rateHz());
        double[] modulus = new double[base.size()];
        Arrays.setAll(modulus, k -> Math.sqrt(base.power(k)));
        boolean[] spoilt = new boolean[slope.length];
        double level = Math.max(usual(modulus), MUCH * levelBefore);
        markGone(modulus, gone * level, spoilt);
        markClicks(slope, modulus, spoilt);
        return new ChannelPiece(slope, spoilt, level);
    }

    /** Level of the tone, to be handed to the next piece. */
    double level() {
        return level;
    }

    /** Slope of the phase, rad/s. */
    double slope(int k) {
        return slope[k];
    }

    boolean isClear(int k) {
        return !spoilt[k];
    }

    boolean isAllClear() {
        for (boolean s : spoilt) {
            if (s) {
                return false;
            }
        }
        return true;
    }

    /** The median, unless more than half of the piece is without the tone. */
    private static double usual(double[] modulus) {
        double median = median(modulus.length, k -> modulus[k]);
        double loud = ranked(modulus.length, LOUDEST, k -> modulus[k]);
        return median < MUCH * loud ? loud : median;
    }

    private static void markGone(double[] modulus, double least, boolean[] spoilt) {
        for (int k = 0; k < modulus.length; k++) {
            if (modulus[k] < least) {
                mark(spoilt, k - HALF);
            }
        }
    }

    private static void markClicks(double[] slope, double[] modulus, boolean[] spoilt) {
        double leastPhase = STRUCK * median(slope.length, k -> jerk(slope, k));
        double leastLevel =
                Math.max(
                        STRUCK * median(modulus.length, k -> jerk(modulus, k)),
                        LEAST_JERK * median(modulus.length, k -> modulus[k]));
        for (int k = 0; k < slope.length; k++) {
            if (jerk(slope, k) > leastPhase && jerkNear(modulus, k + HALF) > leastLevel) {
                mark(spoilt, k);
            }
        }
    }

    private static double jerkNear(double[] x, int at) {
        double most = 0;
        for (int k = at - REACH; k <= at + REACH; k++) {
            most = Math.max(most, jerk(x, k));
        }
        return most;
    }

    /** How far a value lies off the line between its neighbours; 0 where it has only one. */
    private static double jerk(double[] x, int k) {
        boolean inside = k >= REACH && k < x.length - REACH;
        return inside ? Math.abs(x[k] - 0.5 * (x[k - REACH] + x[k + REACH])) : 0;
    }

    private static void mark(boolean[] spoilt, int k) {
        int from = Math.max(0, k - HALF);
        int to = Math.min(spoilt.length, k + HALF + 1);
        for (int i = from; i < to; i++) {
            spoilt[i] = true;
        }
    }

    private static double median(int count, IntToDoubleFunction value) {
        return ranked(count, 0.5, value);
    }

    /** The value that a share of all values exceeds. */
    private static double ranked(int count, double share, IntToDoubleFunction value) {
        double[] sorted = new double[count];
        Arrays.setAll(sorted, value);
        Arrays.sort(sorted);
        return sorted[(int) ((1 - share) * count)];
    }
}
