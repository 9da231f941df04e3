package offtape.report.measure.distortion;

import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.special.Gamma;

/**
 * What the lines of one or more harmonics tell beside noise: their amplitude if they stand out, and
 * otherwise a bound.
 *
 * <p>The power of a line of amplitude A in noise of mean power N is N/2 times a noncentral χ² with
 * two degrees of freedom and noncentrality 2·A²/N; powers of several lines add up to one with twice
 * as many. Lines stand out if noise alone would show as much in fewer than one case of twenty. The
 * bound is the amplitude that would show more than what was found in 19 cases of 20; a find lower
 * than the median of noise alone is taken for that median, so that no lucky draw gives a bound
 * better than the noise allows.
 *
 * @param ratio amplitude re the fundamental, noise taken out; null if it does not stand out
 * @param below the true ratio is below this with 95 % confidence; null if the ratio is told
 */
record HarmonicReading(Double ratio, Double below) {

    private static final double CONFIDENCE = 0.95;
    private static final int MOST_TERMS = 400;

    /**
     * Reads lines.
     *
     * @param power sum of their squared amplitudes as found
     * @param noise mean squared amplitude that noise alone shows in each
     * @param lines their number
     * @param fundamental squared amplitude of the fundamental
     */
    static HarmonicReading of(double power, double noise, int lines, double fundamental) {
        double found = noise > 0 ? 2 * power / noise : Double.POSITIVE_INFINITY;
        ChiSquaredDistribution alone = new ChiSquaredDistribution(2.0 * lines);
        if (found > alone.inverseCumulativeProbability(CONFIDENCE)) {
            return told(power - lines * noise, fundamental);
        }
        double least = Math.max(found, alone.inverseCumulativeProbability(0.5));
        double bound =
                new BrentSolver(1e-6)
                        .solve(
                                200,
                                l -> noncentral(least, lines, l) - (1 - CONFIDENCE),
                                0,
                                20 + 4 * least);
        return new HarmonicReading(null, Math.sqrt(bound / 2 * noise / fundamental));
    }

    /** A reading of a squared amplitude that is known to stand out. */
    static HarmonicReading told(double squared, double fundamental) {
        return new HarmonicReading(Math.sqrt(squared / fundamental), null);
    }

    /**
     * Probability that a noncentral χ² is no more than a value: the mean of central ones with 2, 4,
     * … more degrees of freedom under Poisson's weights.
     *
     * @param pairs half the degrees of freedom
     */
    static double noncentral(double value, int pairs, double noncentrality) {
        double weight = Math.exp(-noncentrality / 2);
        double sum = 0;
        for (int j = 0; j < MOST_TERMS; j++) {
            double more = sum + weight * Gamma.regularizedGammaP(pairs + j, value / 2);
            if (more == sum && j > noncentrality / 2) {
                // Past the largest weight each part is less than the one before.
                return sum;
            }
            sum = more;
            weight *= noncentrality / 2 / (j + 1);
        }
        return sum;
    }
}
