package offtape.report.measure.transport;

import java.util.function.DoubleUnaryOperator;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;

/**
 * The smooth density of what moves at random, over rate: a running mean, a few hundredths of the
 * rate wide, of the power of a series that a filter of known gain has weakened, so that narrow gaps
 * of the filter are bridged by what lies beside them.
 */
final class RestDensity {

    /** Half width of the mean, as a share of the rate, and in resolved widths at least. */
    private static final double SHARE = 0.06;

    private static final double LEAST_WIDTHS = 4;

    /** Of a density that drowns in noise no less than this share of the noise is told. */
    private static final double LEAST = 0.02;

    private final double[] density;
    private final double binHz;

    private RestDensity(double[] density, double binHz) {
        this.density = density;
        this.binHz = binHz;
    }

    /**
     * Estimates a density.
     *
     * @param x the series, about 0
     * @param gain power gain that the filter left, a function of rate
     * @param noise density of the noise in the series
     */
    static RestDensity of(
            double[] x, double rateHz, DoubleUnaryOperator gain, DoubleUnaryOperator noise) {
        int n = RealFft.nextPowerOfTwo(x.length);
        double[] windowed = new double[x.length];
        double squares = 0;
        for (int i = 0; i < x.length; i++) {
            double w = 0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 0.5) / x.length);
            windowed[i] = w * x[i];
            squares += w * w;
        }
        Spectrum spectrum = RealFft.ofSize(n).forward(windowed);
        double binHz = spectrum.binHz(rateHz);
        double[] power = new double[spectrum.bins() + 1];
        double[] gains = new double[power.length];
        double[] noises = new double[power.length];
        for (int k = 0; k < spectrum.bins(); k++) {
            power[k + 1] = power[k] + 2 * spectrum.power(k) / (rateHz * squares);
            gains[k + 1] = gains[k] + gain.applyAsDouble(k * binHz);
            noises[k + 1] = noises[k] + noise.applyAsDouble(k * binHz);
        }
        double[] density = new double[spectrum.bins()];
        double least = LEAST_WIDTHS * rateHz / x.length / binHz;
        for (int k = 0; k < density.length; k++) {
            int reach = (int) Math.ceil(Math.max(least, SHARE * k));
            int from = Math.max(1, k - reach);
            int to = Math.min(density.length, k + reach + 1);
            double own = power[to] - power[from];
            double added = noises[to] - noises[from];
            density[k] =
                    Math.max(own - added, LEAST * added + Double.MIN_NORMAL)
                            / (gains[to] - gains[from]);
        }
        return new RestDensity(density, binHz);
    }

    /** Density at a rate, squared units a hertz. */
    double at(double hz) {
        double place = Math.max(0, Math.min(density.length - 1.0, hz / binHz));
        int k = Math.min(density.length - 2, (int) place);
        return density[k] + (place - k) * (density[k + 1] - density[k]);
    }
}
