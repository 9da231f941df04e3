package offtape.report.measure.noise;

import java.util.Arrays;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;

/**
 * The power of one band in frame after frame, and the steady noise under it.
 *
 * <p>A frame's power of Gaussian noise is a sum of exponentially distributed parts: about χ² with ν
 * degrees of freedom from the densities in the band and the likeness of neighbouring bins under a
 * Hann window (amplitudes of 2/3 and 1/6). No part is larger than 2.667 times the largest bin (the
 * sum of a row, Gershgorin), and a sum of equal parts of that size strays more than any other of
 * the same mean (majorisation), so that χ² with as many degrees of freedom bounds how seldom noise
 * exceeds a threshold.
 *
 * <p>The steady noise is known from the lower quartile of the frames, which sound that is there for
 * up to three quarters of the time does not move.
 */
final class BandCourse {

    private static final double[] LIKENESS = {1, 4.0 / 9, 1.0 / 36};
    private static final double ROW = 1 + 2 * (2.0 / 3 + 1.0 / 6);
    private static final double QUARTILE = 0.25;

    /** Frames that overlap by half are alike by 1/36, which takes so much of their number. */
    private static final double INDEPENDENT = 0.95;

    /** The median may tell of more noise than the quartile by so many deviations. */
    private static final double MIXED = 2;

    private final double fromHz;
    private final double toHz;
    private final double[] powers;
    private final double floor;
    private final double floorDeviation;
    private final boolean isMixed;
    private final double freedom;
    private final double boundFreedom;

    private BandCourse(
            double fromHz, double toHz, double[] powers, double freedom, double boundFreedom) {
        this.fromHz = fromHz;
        this.toHz = toHz;
        this.powers = powers;
        this.freedom = freedom;
        this.boundFreedom = boundFreedom;
        ChiSquaredDistribution chi = new ChiSquaredDistribution(freedom);
        double quantile = chi.inverseCumulativeProbability(QUARTILE);
        double[] sorted = powers.clone();
        Arrays.sort(sorted);
        this.floor = sorted[(int) (QUARTILE * sorted.length)] * freedom / quantile;
        this.floorDeviation =
                Math.sqrt(QUARTILE * (1 - QUARTILE) / (INDEPENDENT * powers.length))
                        / (chi.density(quantile) * quantile);
        double middle = sorted[sorted.length / 2] * freedom / chi.inverseCumulativeProbability(0.5);
        this.isMixed = middle > floor * (1 + MIXED * floorDeviation);
    }

    /**
     * A band of some frames.
     *
     * @param bins power of each bin in each frame
     * @param binHz distance of the bins
     * @param fromHz lower edge
     * @param toHz upper edge
     */
    static BandCourse of(double[][] bins, double binHz, double fromHz, double toHz) {
        double from = fromHz / binHz;
        double to = toHz / binHz;
        int first = (int) Math.round(from);
        double[] shares = new double[(int) Math.round(to) - first + 1];
        for (int k = 0; k < shares.length; k++) {
            shares[k] =
                    Math.max(0, Math.min(to, first + k + 0.5) - Math.max(from, first + k - 0.5));
        }
        double[] powers = new double[bins.length];
        for (int f = 0; f < bins.length; f++) {
            for (int k = 0; k < shares.length; k++) {
                powers[f] += shares[k] * bins[f][first + k];
            }
        }
        double[] quiet = quiet(bins, powers, first, shares);
        double sum = Arrays.stream(quiet).sum();
        double most = Arrays.stream(quiet).max().orElseThrow();
        double freedom = sum > 0 ? 2 * sum * sum / alike(quiet) : 2;
        double boundFreedom = sum > 0 ? 2 * sum / (ROW * most) : 2;
        return new BandCourse(fromHz, toHz, powers, freedom, boundFreedom);
    }

    /** The mean spectrum of the quieter half of the frames. */
    private static double[] quiet(double[][] bins, double[] powers, int first, double[] shares) {
        double[] sorted = powers.clone();
        Arrays.sort(sorted);
        double median = sorted[sorted.length / 2];
        double[] mean = new double[shares.length];
        for (int f = 0; f < powers.length; f++) {
            if (powers[f] <= median) {
                for (int k = 0; k < shares.length; k++) {
                    mean[k] += shares[k] * bins[f][first + k];
                }
            }
        }
        return mean;
    }

    private static double alike(double[] density) {
        double sum = 0;
        for (int j = 0; j < density.length; j++) {
            for (int d = 0; d < LIKENESS.length && j + d < density.length; d++) {
                sum += (d == 0 ? 1 : 2) * LIKENESS[d] * density[j] * density[j + d];
            }
        }
        return sum;
    }

    /** Whether a frequency lies in it. */
    boolean holds(double hz) {
        return hz >= fromHz && hz < toHz;
    }

    /** Power of the steady noise; 0 in digital silence. */
    double floor() {
        return floor;
    }

    /** Degrees of freedom of a frame's power. */
    double freedom() {
        return freedom;
    }

    /** Power of a frame. */
    double power(int frame) {
        return powers[frame];
    }

    /**
     * Power over the floor that noise exceeds in no more than a share of all frames.
     *
     * @param falseAlarms that share
     * @param deviations by how many standard deviations the floor may have been found too low
     */
    double threshold(double falseAlarms, double deviations) {
        double chi =
                new ChiSquaredDistribution(boundFreedom)
                        .inverseCumulativeProbability(1 - falseAlarms);
        return chi / boundFreedom * (1 + deviations * floorDeviation);
    }

    /**
     * What is there beside the steady noise, mean over all frames.
     *
     * @param levels how much louder than usual all noise is in each frame, a ratio of powers
     */
    Excess excess(double[] levels) {
        double sum = 0;
        double noise = 0;
        for (int f = 0; f < powers.length; f++) {
            sum += powers[f] / powers.length;
            noise += floor * levels[f] / powers.length;
        }
        double power = Math.max(0, sum - noise);
        double frames = INDEPENDENT * powers.length;
        double variance =
                noise * noise * floorDeviation * floorDeviation
                        + 2 * noise * (noise + 2 * power) / (freedom * frames);
        return new Excess(power, variance, isMixed ? noise : noise - floor);
    }

    /**
     * A power and how well it is known.
     *
     * @param power mean square
     * @param variance of it
     * @param hidden what of the noise may be sound: what sounded in most bands together, and all
     *     where the median tells of more noise than the quartile; where it does not, half the
     *     frames hold nothing else
     */
    record Excess(double power, double variance, double hidden) {}
}
