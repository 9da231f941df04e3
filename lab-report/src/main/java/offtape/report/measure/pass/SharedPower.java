package offtape.report.measure.pass;

import java.util.Arrays;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;
import offtape.core.standard.FlutterBand;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * What several replays of one tape have in common and what each has of its own, bin by bin of their
 * spectra.
 *
 * <p>With X the spectrum of the tape's part and E of what replay i adds, X + E(i) is seen. The mean
 * of the cross-spectra of all pairs is |X|² on average, the variance among the replays is that of
 * E; both hold without any bias for two replays or more, as long as what the replays add has
 * nothing to do with each other. Given X, the first scatters by 2·|X|²·σ²/P + σ⁴/(P·(P − 1)) and
 * the second, held against the mean power of what these replays did add, by σ⁴/(P·(P − 1)), σ²
 * being E's power: the variances of Re(X*·Ē) and of the products of pairs of circular Gaussian
 * numbers. σ⁴ and |X|²·σ² are estimated without bias too, from the variance R and the common part W
 * of the same bin: R²·(P − 1)/P and W·R + R²/P². (Derived for this class; E has P − 1 complex
 * degrees of freedom, so that R² is σ⁴·(1 + 1/(P − 1)) on average.)
 */
final class SharedPower {

    /** Share of the stretch over which the window rises, and falls. */
    private static final double TAPER = 0.05;

    /** Share of cases within two standard deviations of a Gaussian. */
    private static final double COVERED = 0.9545;

    private static final int NEAR_BINS = 40;

    private final double[] common;
    private final double[] own;
    private final int replays;
    private final double binHz;

    /** By how much a window makes neighbouring bins alike: variances of sums grow by it. */
    private final double alike;

    private SharedPower(double[] common, double[] own, int replays, double binHz, double alike) {
        this.common = common;
        this.own = own;
        this.replays = replays;
        this.binHz = binHz;
        this.alike = alike;
    }

    /**
     * Compares replays.
     *
     * @param series deviations over the same stretch of tape, percent; two or more, equally long
     * @param rateHz values a second
     */
    static SharedPower of(double[][] series, double rateHz) {
        int n = series[0].length;
        double[] window = window(n);
        double squares = Arrays.stream(window).map(w -> w * w).sum();
        double fourths = Arrays.stream(window).map(w -> w * w * w * w).sum();
        int bins = n / 2 + 1;
        double[] re = new double[bins];
        double[] im = new double[bins];
        double[] each = new double[bins];
        RealFft fft = RealFft.ofSize(n);
        for (double[] x : series) {
            double[] windowed = new double[n];
            Arrays.setAll(windowed, i -> window[i] * x[i]);
            Spectrum s = fft.forward(windowed);
            for (int k = 0; k < bins; k++) {
                re[k] += s.re(k);
                im[k] += s.im(k);
                each[k] += s.power(k);
            }
        }
        int p = series.length;
        double scale = 2 / (n * squares);
        double[] common = new double[bins];
        double[] own = new double[bins];
        for (int k = 0; k < bins; k++) {
            double all = re[k] * re[k] + im[k] * im[k];
            common[k] = scale * (all - each[k]) / (p * (p - 1.0));
            own[k] = scale * Math.max(0, each[k] - all / p) / (p - 1);
        }
        return new SharedPower(common, own, p, rateHz / n, n * fourths / (squares * squares));
    }

    private static double[] window(int n) {
        double[] w = new double[n];
        double ramp = Math.max(1, TAPER * n);
        for (int i = 0; i < n; i++) {
            double in = Math.min(1, (Math.min(i, n - 1 - i) + 0.5) / ramp);
            w[i] = 0.5 - 0.5 * Math.cos(Math.PI * in);
        }
        return w;
    }

    /** What repeats, in a band. */
    Share common(FlutterBand band) {
        double p = replays;
        return sum(
                band,
                common,
                k ->
                        2 * (common[k] * own[k] + own[k] * own[k] / (p * p)) / p
                                + own[k] * own[k] / (p * p)
                                + hidden() * common[k] * common[k]);
    }

    /** What does not repeat, in a band: mean power of what a replay adds. */
    Share own(FlutterBand band) {
        double p = replays;
        return sum(band, own, k -> own[k] * own[k] * (1 / (p * p) + hidden() / p));
    }

    /** What the window hides at the ends is power of the stretch too. */
    private double hidden() {
        return 1 - 1 / alike;
    }

    private interface Variance {
        double of(int bin);
    }

    private Share sum(FlutterBand band, double[] power, Variance variance) {
        double sum = 0;
        double scatter = 0;
        double squared = 0;
        for (int k = 1; k < power.length; k++) {
            double gain = band.gain(k * binHz);
            double weight = gain * gain;
            double v = weight * weight * variance.of(k);
            sum += weight * power[k];
            scatter += v;
            squared += v * v;
        }
        return new Share(sum, expanded(Math.max(0, scatter), squared));
    }

    /**
     * Few bins that carry much make a scatter that is itself uncertain: Welch and Satterthwaite.
     */
    private double expanded(double scatter, double squared) {
        if (scatter == 0) {
            return 0;
        }
        double freedom = Math.max(1, scatter * scatter / squared / alike);
        double t = new TDistribution(freedom).inverseCumulativeProbability(1 - (1 - COVERED) / 2);
        return t * Math.sqrt(alike * scatter);
    }

    /** Mean square in a bin of what a replay adds, around a frequency. */
    double ownNear(double hz) {
        return near(own, hz);
    }

    /** Mean square in a bin of what repeats, around a frequency; 0 or more. */
    double commonNear(double hz) {
        return Math.max(0, near(common, hz));
    }

    private double near(double[] power, double hz) {
        int middle = (int) Math.round(hz / binHz);
        int reach = Math.max(3, Math.min(NEAR_BINS, middle / 4));
        int from = Math.max(1, Math.min(power.length - 2, middle - reach));
        int to = Math.min(power.length, middle + reach + 1);
        return Arrays.stream(power, from, to).average().orElse(0);
    }
}
