package offtape.report.measure.noise;

import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import offtape.core.dsp.PowerDensity;
import offtape.report.result.HumLine;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * How far the level of noise read from a stretch of limited length may lie from that of noise that
 * goes on for ever.
 *
 * <p>The mean square of Gaussian noise of weighted density G over a time T is distributed like χ²
 * with ν = 2·T·(∫G df)²/∫G² df degrees of freedom (J. S. Bendat, A. G. Piersol, "Random Data", the
 * statistical bandwidth; from memory). Steady lines do not scatter and are left out of G.
 */
final class NoiseScatter {

    /** Both tails of k = 2: 95.45 % lie between. */
    private static final double TAIL = 0.02275;

    /** Half of the stretch that a mains line takes of a density of moderate fineness, bins. */
    private static final int LINE_BINS = 3;

    private static final double BLOCK_S = 0.5;

    private final double[] density;
    private final double binHz;
    private final double seconds;

    /**
     * The scatter of noise.
     *
     * @param seconds length of the stretch
     * @param lines steady lines in it
     */
    NoiseScatter(PowerDensity density, double seconds, List<HumLine> lines) {
        this.density = new double[density.bins()];
        Arrays.setAll(this.density, density::at);
        this.binHz = density.binHz();
        this.seconds = seconds;
        lines.forEach(l -> smooth((int) Math.round(l.frequencyHz() / binHz)));
    }

    private NoiseScatter(double[] density, double binHz, double seconds) {
        this.density = density;
        this.binHz = binHz;
        this.seconds = seconds;
    }

    /** The same noise over another time. */
    NoiseScatter over(double otherSeconds) {
        return new NoiseScatter(density, binHz, otherSeconds);
    }

    private void smooth(int bin) {
        int from = Math.max(0, bin - LINE_BINS);
        int to = Math.min(density.length - 1, bin + LINE_BINS);
        double level = Math.min(density[from], density[to]);
        for (int k = from; k <= to; k++) {
            density[k] = Math.min(density[k], level);
        }
    }

    /**
     * Degrees of freedom of the noise's power behind a power weighting, between two frequencies.
     */
    double freedom(double fromHz, double toHz, DoubleUnaryOperator gain) {
        double sum = sum(fromHz, toHz, f -> gain.applyAsDouble(f), 1);
        double squares = sum(fromHz, toHz, f -> gain.applyAsDouble(f), 2);
        return squares > 0 ? 2 * seconds * sum * sum / squares : 0;
    }

    private double sum(double fromHz, double toHz, DoubleUnaryOperator gain, int exponent) {
        double sum = 0;
        int last = (int) Math.min(density.length - 1, Math.floor(toHz / binHz));
        for (int k = (int) Math.ceil(fromHz / binHz); k <= last; k++) {
            sum += Math.pow(density[k] * gain.applyAsDouble(k * binHz), exponent) * binHz;
        }
        return sum;
    }

    /**
     * Expanded uncertainty (k = 2) in dB of a power of which the noise is a part.
     *
     * @param power noise and lines together
     */
    double uncertaintyDb(double fromHz, double toHz, DoubleUnaryOperator gain, double power) {
        double freedom = freedom(fromHz, toHz, gain);
        if (!(freedom >= 1)) {
            return 0;
        }
        double noise = Math.min(1, sum(fromHz, toHz, gain, 1) / power);
        ChiSquaredDistribution chi = new ChiSquaredDistribution(freedom);
        double above = freedom / chi.inverseCumulativeProbability(TAIL) - 1;
        return 10 * Math.log10(1 + noise * above);
    }

    /**
     * The same for the mean of a fluctuating reading, from the scatter of its means over half
     * seconds, in dB of an amplitude; falls back on {@code least} where there are too few.
     */
    static double ofMeanDb(double[] reading, double rateHz, double least) {
        int length = (int) (BLOCK_S * rateHz);
        int blocks = reading.length / length;
        if (blocks < 3) {
            return least;
        }
        double[] means = new double[blocks];
        for (int b = 0; b < blocks; b++) {
            means[b] = Arrays.stream(reading, b * length, (b + 1) * length).average().orElseThrow();
        }
        double mean = Arrays.stream(means).average().orElseThrow();
        double squares = Arrays.stream(means).map(m -> (m - mean) * (m - mean)).sum();
        double deviation = Math.sqrt(squares / (blocks - 1) / blocks) / mean;
        double t = new TDistribution(blocks - 1).inverseCumulativeProbability(1 - TAIL);
        return Math.max(least, 20 * Math.log10(1 + t * deviation));
    }
}
