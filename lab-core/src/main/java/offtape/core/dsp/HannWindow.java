package offtape.core.dsp;

/**
 * Hann's window, ½ − ½·cos(2π(i + ½)/n), i = 0 … n−1: symmetrical, with no zero at its ends.
 *
 * <p>Source: F. J. Harris, "On the use of windows for harmonic analysis with the discrete Fourier
 * transform", Proc. IEEE 66(1), 1978, section V.C (there with its middle on a sample).
 */
public final class HannWindow {

    private HannWindow() {}

    /** The window over {@code n} samples, n at least 1; its sum is n/2. */
    public static double[] of(int n) {
        double[] w = new double[n];
        for (int i = 0; i < n; i++) {
            w[i] = 0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 0.5) / n);
        }
        return w;
    }

    /**
     * A stretch of sound under a window.
     *
     * @param window as long as the stretch
     * @param x samples, which stay as they are
     * @param from first sample of the stretch
     */
    public static double[] applied(double[] window, double[] x, int from) {
        double[] out = new double[window.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = window[i] * x[from + i];
        }
        return out;
    }
}
