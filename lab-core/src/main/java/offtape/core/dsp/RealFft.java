package offtape.core.dsp;

import org.jtransforms.fft.DoubleFFT_1D;

/**
 * The discrete Fourier transform of real sequences of one length.
 *
 * <p>X(k) = Σ x(j)·exp(−2πi·jk/n), j = 0 … n−1, unscaled; the inverse carries the factor 1/n, so
 * that {@code inverse(forward(x))} is x again (to about 1e-15 of the largest sample). Any length
 * from 1 is possible; powers of two are fastest and take the least memory. Arguments are not
 * modified. Instances are immutable and may be shared between threads.
 */
public final class RealFft {

    private final int n;
    private final DoubleFFT_1D plan;

    private RealFft(int n) {
        this.n = n;
        this.plan = TransformPlans.of(n);
    }

    /**
     * The transform of sequences of {@code n} samples.
     *
     * @throws IllegalArgumentException if n is less than 1
     */
    public static RealFft ofSize(int n) {
        if (n < 1) {
            throw new IllegalArgumentException("a transform has at least one point, not " + n);
        }
        return new RealFft(n);
    }

    /**
     * The smallest power of two that is not less than {@code n}.
     *
     * @param n 1 … 2^30
     * @throws IllegalArgumentException if n lies outside that range
     */
    public static int nextPowerOfTwo(int n) {
        if (n < 1 || n > 1 << 30) {
            throw new IllegalArgumentException("no power of two for " + n);
        }
        return n == 1 ? 1 : Integer.highestOneBit(n - 1) << 1;
    }

    /** Number of samples. */
    public int size() {
        return n;
    }

    /**
     * The spectrum of up to {@code n} samples; what is missing counts as zeros.
     *
     * @throws IllegalArgumentException if {@code x} is longer than n
     */
    public Spectrum forward(double[] x) {
        return forward(x, 0, x.length);
    }

    /**
     * The spectrum of {@code length} samples from {@code offset}; zeros follow up to n samples.
     *
     * @throws IllegalArgumentException if {@code length} is more than n
     */
    public Spectrum forward(double[] x, int offset, int length) {
        if (length > n) {
            throw new IllegalArgumentException(length + " samples do not fit into " + n);
        }
        double[] packed = new double[n];
        System.arraycopy(x, offset, packed, 0, length);
        plan.realForward(packed);
        return unpacked(packed);
    }

    /**
     * The n samples of a spectrum.
     *
     * @throws IllegalArgumentException if the spectrum is of another length
     */
    public double[] inverse(Spectrum spectrum) {
        if (spectrum.length() != n) {
            throw new IllegalArgumentException(
                    "a spectrum of " + spectrum.length() + " samples is not one of " + n);
        }
        double[] packed = packed(spectrum);
        plan.realInverse(packed, true);
        return packed;
    }

    // Packed order of the library: re 0, then re n/2 (n even) or im (n-1)/2 (n odd), then re 1,
    // im 1, re 2, im 2 … ; for odd n the last real part stands alone at the end.
    private Spectrum unpacked(double[] packed) {
        int bins = n / 2 + 1;
        double[] re = new double[bins];
        double[] im = new double[bins];
        re[0] = packed[0];
        for (int k = 1; k < (n - 1) / 2; k++) {
            re[k] = packed[2 * k];
            im[k] = packed[2 * k + 1];
        }
        for (int k = Math.max(1, (n - 1) / 2); k < bins; k++) {
            re[k] = packed[reIndex(k)];
            im[k] = isReal(k) ? 0 : packed[imIndex(k)];
        }
        return new Spectrum(n, re, im);
    }

    private double[] packed(Spectrum spectrum) {
        double[] packed = new double[n];
        for (int k = 0; k < spectrum.bins(); k++) {
            packed[reIndex(k)] = spectrum.re(k);
            if (!isReal(k)) {
                packed[imIndex(k)] = spectrum.im(k);
            }
        }
        return packed;
    }

    private boolean isReal(int k) {
        return k == 0 || 2 * k == n;
    }

    private int reIndex(int k) {
        return 2 * k == n ? 1 : 2 * k;
    }

    private int imIndex(int k) {
        return 2 * k + 1 == n ? 1 : 2 * k + 1;
    }
}
