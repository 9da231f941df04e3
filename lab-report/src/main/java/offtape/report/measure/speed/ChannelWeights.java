package offtape.report.measure.speed;

import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.stream.IntStream;
import offtape.core.dsp.Baseband;
import offtape.core.dsp.PowerDensity;

/**
 * How much each channel's tone counts: by the inverse of its phase noise, which is read from the
 * fluctuation of its level, for noise that is added to a tone shakes both alike and tape speed
 * shakes only the phase.
 */
final class ChannelWeights {

    /** Pieces of a long tone that the weights are taken from. */
    private static final int MOST_SPOTS = 32;

    /**
     * Phase noise from which a channel counts as without a tone, rad²/Hz: noise alone in a band of
     * some hundred hertz shows 0.27 rad² over that band or more.
     */
    private static final double NO_TONE = 3e-4;

    private static final int LONGEST_TRANSFORM = 1024;

    private final ToneBand band;
    private final double[] weights;
    private final Mean[] clear;
    private final Mean[] any;

    private static final class Mean {

        private double sum;
        private int count;

        void add(double value) {
            sum += value;
            count++;
        }

        double value() {
            return sum / count;
        }
    }

    ChannelWeights(int channels, ToneBand band) {
        this.band = band;
        this.weights = new double[channels];
        this.clear = means(channels);
        this.any = means(channels);
    }

    private static Mean[] means(int count) {
        Mean[] means = new Mean[count];
        Arrays.setAll(means, c -> new Mean());
        return means;
    }

    /** The numbers of the pieces to weigh the channels by: spread evenly over the tone. */
    static List<Integer> spots(int pieces) {
        int spots = Math.min(MOST_SPOTS, pieces);
        return IntStream.range(0, spots)
                .map(i -> (int) ((long) i * pieces / spots))
                .boxed()
                .toList();
    }

    /** Weighs the channels by some pieces of the tone. */
    void settle(Collection<List<Baseband>> pieces) {
        int spots = pieces.size();
        double[][] noise = new double[weights.length][spots];
        int i = 0;
        for (List<Baseband> bases : pieces) {
            for (int c = 0; c < noise.length; c++) {
                noise[c][i] = phaseNoise(bases.get(c));
            }
            i++;
        }
        for (int c = 0; c < noise.length; c++) {
            Arrays.sort(noise[c]);
            double usual = noise[c][spots / 2];
            weights[c] = usual < NO_TONE ? 1 / (usual + 1e-16) : 0;
        }
    }

    boolean areAllZero() {
        return sum() == 0;
    }

    double of(int channel) {
        return weights[channel];
    }

    double sum() {
        double sum = 0;
        for (double w : weights) {
            sum += w;
        }
        return sum;
    }

    /**
     * Takes note of the noise of a piece.
     *
     * @param isClear whether it is free of dropouts and clicks
     * @return whether there is a tone in it at all
     */
    boolean note(int channel, Baseband base, boolean isClear) {
        double density = phaseNoise(base);
        if (density >= NO_TONE) {
            return false;
        }
        any[channel].add(density);
        if (isClear) {
            clear[channel].add(density);
        }
        return true;
    }

    /** Phase noise of all channels together, as they were weighed, rad²/Hz. */
    double noiseDensity() {
        double total = 0;
        for (int c = 0; c < weights.length; c++) {
            if (weights[c] > 0 && any[c].count > 0) {
                Mean mean = clear[c].count > 0 ? clear[c] : any[c];
                total += weights[c] * weights[c] * mean.value();
            }
        }
        return total / (sum() * sum());
    }

    private double phaseNoise(Baseband base) {
        double[] modulus = new double[base.size()];
        double mean = 0;
        for (int k = 0; k < modulus.length; k++) {
            modulus[k] = Math.sqrt(base.power(k));
            mean += modulus[k] / modulus.length;
        }
        if (mean == 0) {
            return Double.POSITIVE_INFINITY;
        }
        for (int k = 0; k < modulus.length; k++) {
            modulus[k] = modulus[k] / mean - 1;
        }
        return PowerDensity.of(modulus, base.rateHz(), LONGEST_TRANSFORM)
                .mean(0.4 * band.passHz(), 0.9 * band.passHz());
    }
}
