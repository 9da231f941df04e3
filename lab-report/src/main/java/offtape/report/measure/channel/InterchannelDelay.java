package offtape.report.measure.channel;

import offtape.core.unit.Quantity;
import offtape.report.measure.noise.NoiseDensities;
import offtape.report.measure.sweep.FollowedSweep;
import offtape.report.measure.sweep.Leakage;
import offtape.report.measure.sweep.SweepFollower;
import offtape.report.measure.tone.Complex;

/**
 * How late the right channel is against the left, from the cross-spectrum along a sweep: the phase
 * difference over the whole band is a straight line through zero (or half a turn, if one channel is
 * inverted) whose slope is the delay. One tone alone could not tell the delay from itself plus
 * whole periods.
 *
 * @param delay µs, positive if the right channel is late
 * @param opposite whether the channels are of opposite polarity
 */
record InterchannelDelay(Quantity delay, boolean opposite) {

    private static final double LOWEST_HZ = 100;
    private static final double HIGHEST_HZ = 16_000;

    /** Room for filters and interpolation on a clean path, µs, k = 2. */
    private static final double OWN_UNCERTAINTY_US = 0.03;

    /** Phase error of a band at a perfect signal-to-noise ratio, radians. */
    private static final double OWN_PHASE_ERROR = 0.003;

    /** Fits the phase line of a sweep that sounded on both channels. */
    static InterchannelDelay of(
            FollowedSweep sweep, NoiseDensities noise, double speedRatio, Leakage leakage) {
        double[] w = new double[sweep.size()];
        double[] phase = new double[sweep.size()];
        double[] weight = new double[sweep.size()];
        int count = 0;
        double previous = 0;
        for (int i = 0; i < sweep.size(); i++) {
            double hz = sweep.frequencyHz(i);
            double quality = quality(sweep, noise, i, speedRatio);
            if (hz >= LOWEST_HZ && hz <= HIGHEST_HZ && quality > 0) {
                Complex heard = new Complex(sweep.crossRe(i), sweep.crossIm(i));
                double p = leakage.unmixed(heard, sweep.power(0, i), sweep.power(1, i), hz).phase();
                p -= 2 * Math.PI * Math.rint((p - previous) / (2 * Math.PI));
                previous = p;
                w[count] = 2 * Math.PI * hz * speedRatio;
                phase[count] = p;
                weight[count] = quality;
                count++;
            }
        }
        if (count < 12) {
            return new InterchannelDelay(
                    Quantity.unknown("The sweep was not heard on both channels."), false);
        }
        return fit(w, phase, weight, count);
    }

    /** One over the variance of a band's phase; 0 if a channel is not clear of the noise there. */
    private static double quality(
            FollowedSweep sweep, NoiseDensities noise, int i, double speedRatio) {
        double variance = OWN_PHASE_ERROR * OWN_PHASE_ERROR;
        for (int c = 0; c < 2; c++) {
            double floor =
                    sweep.noisePower(i, noise == null ? null : noise.densities()[c], speedRatio);
            double own = sweep.power(c, i) - floor;
            if (!(own > 3 * floor)) {
                return 0;
            }
            variance += floor / own / 2 / sweep.independent(i);
        }
        return 1 / variance;
    }

    private static InterchannelDelay fit(double[] w, double[] phase, double[] weight, int count) {
        double halfTurns = Math.rint(startPhase(w, phase, weight, count) / Math.PI);
        double turn = Math.PI * halfTurns;
        double up = 0;
        double down = 0;
        for (int i = 0; i < count; i++) {
            up += weight[i] * w[i] * (phase[i] - turn);
            down += weight[i] * w[i] * w[i];
        }
        double slope = up / down;
        double rest = 0;
        for (int i = 0; i < count; i++) {
            double d = phase[i] - turn - slope * w[i];
            rest += weight[i] * d * d;
        }
        double scatter = Math.sqrt(Math.max(1, rest / (count - 1)) / down);
        double uncertainty = Math.hypot(2e6 * scatter, OWN_UNCERTAINTY_US);
        return new InterchannelDelay(
                Quantity.known(1e6 * slope, "µs", uncertainty), Math.abs(halfTurns) % 2 == 1);
    }

    /** Value at 0 Hz of a line with free intercept, radians: near a multiple of π. */
    private static double startPhase(double[] w, double[] phase, double[] weight, int count) {
        double s = 0;
        double sx = 0;
        double sy = 0;
        double sxx = 0;
        double sxy = 0;
        for (int i = 0; i < count; i++) {
            s += weight[i];
            sx += weight[i] * w[i];
            sy += weight[i] * phase[i];
            sxx += weight[i] * w[i] * w[i];
            sxy += weight[i] * w[i] * phase[i];
        }
        return (sy * sxx - sx * sxy) / (s * sxx - sx * sx);
    }

    /** The loss at 10 kHz when the channels are summed to mono, dB. */
    static Quantity monoLoss(FollowedSweep sweep) {
        int at = sweep.index(10_000);
        int reach = SweepFollower.BANDS / 24;
        double left = 0;
        double right = 0;
        double cross = 0;
        for (int i = Math.max(0, at - reach); i <= Math.min(sweep.size() - 1, at + reach); i++) {
            left += sweep.power(0, i);
            right += sweep.power(1, i);
            cross += sweep.crossRe(i);
        }
        if (!(left > 0 && right > 0) || at < 0 || at >= sweep.size()) {
            return Quantity.unknown("The sweep does not reach 10 kHz on both channels.");
        }
        double inStep = left + right + 2 * Math.sqrt(left * right);
        double summed = Math.max(1e-6 * inStep, left + right + 2 * cross);
        double loss = Math.max(0, 10 * Math.log10(inStep / summed));
        return Quantity.known(loss, "dB", 0.05 + 0.02 * loss);
    }
}
