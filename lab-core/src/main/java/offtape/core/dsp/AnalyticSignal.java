package offtape.core.dsp;

/**
 * A signal with its Hilbert transform as imaginary part, taken as one period of a periodic signal,
 * so that its correlation with a template is that of {@link AnalyticCorrelation}, one lag at a
 * time: much less work than a transform where only a few lags are wanted.
 */
public final class AnalyticSignal {

    private final double[] re;
    private final double[] im;

    private AnalyticSignal(double[] re, double[] im) {
        this.re = re;
        this.im = im;
    }

    /** The analytic signal of a spectrum's sequence. */
    public static AnalyticSignal of(Spectrum spectrum) {
        int n = spectrum.length();
        AnalyticCorrelation all = AnalyticCorrelation.of(spectrum, n, n);
        return new AnalyticSignal(all.re(), all.im());
    }

    /**
     * Squared envelope of the correlation with a template.
     *
     * @param template not longer than the signal less the lag
     * @param lag sample of the signal on which the template's first lies, 0 or more
     */
    public double power(double[] template, int lag) {
        double a = correlation(re, template, lag);
        double b = correlation(im, template, lag);
        return a * a + b * b;
    }

    /** The plain correlation with a template at a lag, whose sign tells polarity. */
    public double plain(double[] template, int lag) {
        return correlation(re, template, lag);
    }

    /** Four sums side by side: a single one would wait for each addition to end. */
    private static double correlation(double[] x, double[] template, int lag) {
        double a = 0;
        double b = 0;
        double c = 0;
        double d = 0;
        int i = 0;
        for (; i + 3 < template.length; i += 4) {
            a += x[lag + i] * template[i];
            b += x[lag + i + 1] * template[i + 1];
            c += x[lag + i + 2] * template[i + 2];
            d += x[lag + i + 3] * template[i + 3];
        }
        for (; i < template.length; i++) {
            a += x[lag + i] * template[i];
        }
        return (a + b) + (c + d);
    }
}
