package offtape.core.dsp;

import java.util.List;

/**
 * Cross-correlation of a signal with a template, as an analytic function of lag: its modulus is the
 * envelope, whose peak does not move with a phase shift of the path, and its real part the plain
 * correlation, whose sign tells polarity.
 *
 * @param re plain correlation at lag 0, 1, 2 …
 * @param im its Hilbert transform
 */
public record AnalyticCorrelation(double[] re, double[] im) {

    /**
     * Correlates at every lag at which the template lies wholly inside the signal.
     *
     * @param signal the longer sequence
     * @param template the shorter sequence
     * @return lag k sets template sample 0 on signal sample k; {@code signal.length −
     *     template.length + 1} lags
     * @throws IllegalArgumentException if the template is longer than the signal
     */
    public static AnalyticCorrelation of(double[] signal, double[] template) {
        return ofAll(List.of(spectrum(signal)), signal.length, template).get(0);
    }

    /** The spectrum of a signal that is to be correlated with several templates. */
    public static Spectrum spectrum(double[] signal) {
        return RealFft.ofSize(RealFft.nextPowerOfTwo(signal.length)).forward(signal);
    }

    /**
     * Correlates several signals of one length with one template, as {@link #of} does.
     *
     * @param signals what {@link #spectrum} gave for each
     * @param length their length in samples
     * @throws IllegalArgumentException if the template is longer than the signals
     */
    public static List<AnalyticCorrelation> ofAll(
            List<Spectrum> signals, int length, double[] template) {
        int lags = length - template.length + 1;
        if (lags < 1) {
            throw new IllegalArgumentException("the template is longer than the signal");
        }
        int n = RealFft.nextPowerOfTwo(length);
        Spectrum sought = RealFft.ofSize(n).forward(template);
        return signals.stream().map(s -> of(s.timesConjugate(sought), n, lags)).toList();
    }

    /** The first lags of a cross-spectrum's sequence of {@code n} samples. */
    static AnalyticCorrelation of(Spectrum product, int n, int lags) {
        double[] z = new double[2 * n];
        for (int k = 0; k < product.bins(); k++) {
            double gain = k == 0 || 2 * k == n ? 1 : 2;
            z[2 * k] = gain * product.re(k);
            z[2 * k + 1] = gain * product.im(k);
        }
        ComplexFft.ofSize(n).inverse(z);
        double[] re = new double[lags];
        double[] im = new double[lags];
        for (int k = 0; k < lags; k++) {
            re[k] = z[2 * k];
            im[k] = z[2 * k + 1];
        }
        return new AnalyticCorrelation(re, im);
    }

    /** Squared envelope at a lag. */
    public double power(int lag) {
        return re[lag] * re[lag] + im[lag] * im[lag];
    }
}
