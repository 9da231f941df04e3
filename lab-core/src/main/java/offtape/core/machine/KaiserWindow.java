package offtape.core.machine;

/**
 * The Kaiser window and Kaiser's rules for its shape and length (J. F. Kaiser, "Nonrecursive
 * digital filter design using the I0-sinh window function", 1974; formulas as in the textbooks of
 * digital filter design, from memory, confirmed by the tests' measured attenuation).
 */
final class KaiserWindow {

    private final double beta;

    private KaiserWindow(double beta) {
        this.beta = beta;
    }

    /** The window whose filters are {@code attenuationDb} down in the stop band, above 50 dB. */
    static KaiserWindow of(double attenuationDb) {
        return new KaiserWindow(0.1102 * (attenuationDb - 8.7));
    }

    /** Half length in samples of a filter with a transition of a share of the sample rate. */
    static int halfLength(double attenuationDb, double transition) {
        double length = (attenuationDb - 7.95) / (2.285 * 2 * Math.PI * transition);
        return (int) Math.ceil(length / 2);
    }

    /** The window at −1 … 1; 0 outside. */
    double at(double x) {
        return Math.abs(x) > 1 ? 0 : besselI0(beta * Math.sqrt(1 - x * x)) / besselI0(beta);
    }

    // I0(x) = Σ ((x/2)^k / k!)²; all terms positive, so the sum is as good as its last bit.
    private static double besselI0(double x) {
        double quarter = x * x / 4;
        double term = 1;
        double sum = 1;
        for (int k = 1; term > 1e-17 * sum; k++) {
            term *= quarter / ((double) k * k);
            sum += term;
        }
        return sum;
    }
}
