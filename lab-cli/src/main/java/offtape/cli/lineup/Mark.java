package offtape.cli.lineup;

import java.util.OptionalDouble;
import offtape.core.dsp.AnalyticCorrelation;

/**
 * A short chirp by which the delay is found: its frequency rises evenly from 300 Hz to 7 kHz, and
 * it fades in and out by half a cosine.
 */
final class Mark {

    /** Peak, dB re the peak of the reference tone: far from saturation, and no shock to an ear. */
    static final double LEVEL_DB = -20;

    /** Sound that has to lie behind a mark before it is believed, so that none is half in. */
    static final double BEHIND_S = 0.25;

    private static final double LENGTH_S = 0.2;
    private static final double FADE_S = 0.02;
    private static final double FROM_HZ = 300;
    private static final double TO_HZ = 7000;

    /** Share of the sound under the mark's place that has to be the mark. */
    private static final double LEAST_SHARE = 0.25;

    private Mark() {}

    /** Its samples, peak at most 1. */
    static double[] samples(int sampleRateHz) {
        double[] x = new double[(int) Math.round(LENGTH_S * sampleRateHz)];
        for (int i = 0; i < x.length; i++) {
            double t = (double) i / sampleRateHz;
            double phase = FROM_HZ * t + (TO_HZ - FROM_HZ) * t * t / (2 * LENGTH_S);
            double end = Math.min(t, LENGTH_S - t) / FADE_S;
            double fade = end < 1 ? 0.5 - 0.5 * Math.cos(Math.PI * Math.max(0, end)) : 1;
            x[i] = fade * Math.sin(2 * Math.PI * phase);
        }
        return x;
    }

    /**
     * Looks for the mark.
     *
     * @param sound one channel
     * @param mark as {@link #samples} gives it
     * @return the sample, with its fraction, at which the mark begins, if it is there
     */
    static OptionalDouble find(double[] sound, double[] mark) {
        if (sound.length < mark.length + 2) {
            return OptionalDouble.empty();
        }
        AnalyticCorrelation c = AnalyticCorrelation.of(sound, mark);
        int best = 1;
        for (int k = 1; k < sound.length - mark.length; k++) {
            if (c.power(k) > c.power(best)) {
                best = k;
            }
        }
        double under = energy(sound, best, mark.length);
        double share = c.power(best) / (under * energy(mark, 0, mark.length));
        if (!(under > 0) || share < LEAST_SHARE) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(
                best + vertex(c.power(best - 1), c.power(best), c.power(best + 1)));
    }

    private static double vertex(double before, double middle, double after) {
        double bend = before - 2 * middle + after;
        return bend < 0 ? (before - after) / (2 * bend) : 0;
    }

    /** Energy of a stretch. */
    static double energy(double[] x, int from, int count) {
        double sum = 0;
        for (int i = from; i < from + count; i++) {
            sum += x[i] * x[i];
        }
        return sum;
    }
}
