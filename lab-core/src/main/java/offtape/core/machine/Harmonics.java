package offtape.core.machine;

import java.util.function.DoubleUnaryOperator;

/**
 * Fourier components of a curve's output for a sine at its input: 1/π·∫f(A·sin θ)·sin nθ dθ for odd
 * n, with the cosine for even n, by the trapezoidal rule, which for a smooth periodic integrand
 * errs by no more than rounding.
 */
final class Harmonics {

    private static final int POINTS = 1024;
    private static final int HIGHEST = 9;
    private static final double[] SINE = sine();

    private final double[] peaks;

    private Harmonics(double[] peaks) {
        this.peaks = peaks;
    }

    /** Components of {@code curve} for a sine of a peak above 0. */
    static Harmonics of(DoubleUnaryOperator curve, double peak) {
        double[] sums = new double[HIGHEST + 1];
        for (int i = 0; i < POINTS; i++) {
            double y = curve.applyAsDouble(peak * SINE[i]);
            for (int n = 1; n <= HIGHEST; n++) {
                int quarter = n % 2 == 1 ? 0 : POINTS / 4;
                sums[n] += y * SINE[(n * i + quarter) % POINTS];
            }
        }
        for (int n = 0; n <= HIGHEST; n++) {
            sums[n] = Math.abs(sums[n]) * 2 / POINTS;
        }
        return new Harmonics(sums);
    }

    /** Peak of the n-th component, n from 1 to 9. */
    double peak(int n) {
        return peaks[n];
    }

    /** Peak of the n-th component re the fundamental. */
    double ratio(int n) {
        return peaks[n] / peaks[1];
    }

    private static double[] sine() {
        double[] sine = new double[POINTS];
        for (int i = 0; i < POINTS; i++) {
            sine[i] = Math.sin(2 * Math.PI * i / POINTS);
        }
        return sine;
    }
}
