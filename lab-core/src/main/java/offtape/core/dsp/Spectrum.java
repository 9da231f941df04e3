package offtape.core.dsp;

import java.util.function.IntToDoubleFunction;

/**
 * The spectrum of a real sequence of n samples: bins 0 … n/2 (rounded down), unscaled as {@link
 * RealFft} defines it. The bins above are the conjugates and are not stored. Immutable.
 */
public final class Spectrum {

    private final int n;
    private final double[] re;
    private final double[] im;

    /** Takes the arrays over: callers in this package hand them in and forget them. */
    Spectrum(int n, double[] re, double[] im) {
        this.n = n;
        this.re = re;
        this.im = im;
    }

    /**
     * A spectrum from its parts, which are copied.
     *
     * @param n number of samples of the sequence, at least 1
     * @param re real parts of bins 0 … n/2
     * @param im imaginary parts; those of bin 0 and, for even n, of bin n/2 are taken as zero
     * @throws IllegalArgumentException if the arrays are not n/2 + 1 long
     */
    public static Spectrum of(int n, double[] re, double[] im) {
        if (n < 1 || re.length != n / 2 + 1 || im.length != re.length) {
            throw new IllegalArgumentException(
                    n
                            + " samples have "
                            + (n / 2 + 1)
                            + " bins, not "
                            + re.length
                            + " and "
                            + im.length);
        }
        double[] imaginary = im.clone();
        imaginary[0] = 0;
        if (n % 2 == 0) {
            imaginary[n / 2] = 0;
        }
        return new Spectrum(n, re.clone(), imaginary);
    }

    /** Number of samples of the sequence. */
    public int length() {
        return n;
    }

    /** Number of bins, n/2 + 1. */
    public int bins() {
        return re.length;
    }

    /** Real part of bin k, 0 … n/2. */
    public double re(int k) {
        return re[k];
    }

    /** Imaginary part of bin k, 0 … n/2. */
    public double im(int k) {
        return im[k];
    }

    /**
     * Squared magnitude of bin k. By Parseval the sum of squares of the samples is the sum of the
     * powers of all n bins divided by n, where each bin that has a conjugate counts twice.
     */
    public double power(int k) {
        return re[k] * re[k] + im[k] * im[k];
    }

    /** Magnitude of bin k. */
    public double magnitude(int k) {
        return Math.hypot(re[k], im[k]);
    }

    /** Distance of the bins in hertz at a sample rate in hertz: bin k lies at k times that. */
    public double binHz(double sampleRateHz) {
        return sampleRateHz / n;
    }

    /**
     * The spectrum of every so many-th sample, without what lies at half their rate or above.
     *
     * @param step divides the number of samples, and leaves an even number of them
     * @throws IllegalArgumentException if it does not
     */
    public Spectrum thinned(int step) {
        if (step < 1 || n % (2 * step) != 0) {
            throw new IllegalArgumentException(n + " samples cannot be thinned by " + step);
        }
        int bins = n / step / 2 + 1;
        double[] a = new double[bins];
        double[] b = new double[bins];
        for (int k = 0; k < bins - 1; k++) {
            a[k] = re[k] / step;
            b[k] = im[k] / step;
        }
        return new Spectrum(n / step, a, b);
    }

    /** Every bin times a real gain of its number; zero phase. */
    public Spectrum times(IntToDoubleFunction gain) {
        double[] a = new double[re.length];
        double[] b = new double[re.length];
        for (int k = 0; k < re.length; k++) {
            double g = gain.applyAsDouble(k);
            a[k] = g * re[k];
            b[k] = g * im[k];
        }
        return new Spectrum(n, a, b);
    }

    /**
     * Product bin by bin: the spectrum of the circular convolution.
     *
     * @throws IllegalArgumentException if the lengths differ
     */
    public Spectrum times(Spectrum other) {
        return product(other, 1);
    }

    /**
     * Product with the other's conjugate: the cross-spectrum, whose inverse is the circular
     * correlation Σ this(j + lag)·other(j).
     *
     * @throws IllegalArgumentException if the lengths differ
     */
    public Spectrum timesConjugate(Spectrum other) {
        return product(other, -1);
    }

    private Spectrum product(Spectrum other, int sign) {
        if (other.n != n) {
            throw new IllegalArgumentException(
                    "spectra of " + n + " and " + other.n + " samples do not multiply");
        }
        double[] a = new double[re.length];
        double[] b = new double[re.length];
        for (int k = 0; k < re.length; k++) {
            double oi = sign * other.im[k];
            a[k] = re[k] * other.re[k] - im[k] * oi;
            b[k] = re[k] * oi + im[k] * other.re[k];
        }
        return new Spectrum(n, a, b);
    }
}
