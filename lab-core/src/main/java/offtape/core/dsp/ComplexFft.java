package offtape.core.dsp;

import org.jtransforms.fft.DoubleFFT_1D;

/**
 * The discrete Fourier transform of complex sequences of one length, in place. The sequence is
 * stored interleaved: re 0, im 0, re 1, im 1 … , 2n numbers. Forward X(k) = Σ x(j)·exp(−2πi·jk/n)
 * is unscaled; the inverse carries 1/n. Instances are immutable and may be shared between threads.
 */
public final class ComplexFft {

    private final int n;
    private final DoubleFFT_1D plan;

    private ComplexFft(int n) {
        this.n = n;
        this.plan = TransformPlans.of(n);
    }

    /**
     * The transform of sequences of {@code n} complex samples; powers of two are fastest.
     *
     * @throws IllegalArgumentException if n is less than 1
     */
    public static ComplexFft ofSize(int n) {
        if (n < 1) {
            throw new IllegalArgumentException("a transform has at least one point, not " + n);
        }
        return new ComplexFft(n);
    }

    /** Number of complex samples. */
    public int size() {
        return n;
    }

    /**
     * Replaces the sequence by its spectrum.
     *
     * @param interleaved 2n numbers, modified
     * @throws IllegalArgumentException if the array is of another length
     */
    public void forward(double[] interleaved) {
        check(interleaved);
        plan.complexForward(interleaved);
    }

    /**
     * Replaces a spectrum by its sequence, scaled by 1/n.
     *
     * @param interleaved 2n numbers, modified
     * @throws IllegalArgumentException if the array is of another length
     */
    public void inverse(double[] interleaved) {
        check(interleaved);
        plan.complexInverse(interleaved, true);
    }

    private void check(double[] interleaved) {
        if (interleaved.length != 2 * n) {
            throw new IllegalArgumentException(
                    n + " complex samples are " + 2 * n + " numbers, not " + interleaved.length);
        }
    }
}
