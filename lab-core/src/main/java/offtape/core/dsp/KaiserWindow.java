package offtape.core.dsp;

/**
 * The Kaiser window I0(β √(1 − x²)) / I0(β).
 *
 * <p>Source: J. F. Kaiser, Proc. IEEE ISCAS, 1974. The Bessel function is summed from its power
 * series (Abramowitz and Stegun 9.6.12), which converges to double precision for the β used here.
 */
public final class KaiserWindow {

    private KaiserWindow() {}

    /** The β that gives a stop band attenuation in dB (21 dB or more). */
    public static double beta(double attenuationDb) {
        if (attenuationDb > 50) {
            return 0.1102 * (attenuationDb - 8.7);
        }
        return 0.5842 * Math.pow(Math.max(0, attenuationDb - 21), 0.4)
                + 0.07886 * Math.max(0, attenuationDb - 21);
    }

    /** Value at x from −1 to 1; 0 outside. */
    public static double value(double x, double beta) {
        double rest = 1 - x * x;
        return rest < 0 ? 0 : besselI0(beta * Math.sqrt(rest)) / besselI0(beta);
    }

    /** Modified Bessel function of the first kind and order zero. */
    static double besselI0(double x) {
        double quarter = x * x / 4;
        double term = 1;
        double sum = 1;
        for (int k = 1; term > sum * 1e-17; k++) {
            term *= quarter / ((double) k * k);
            sum += term;
        }
        return sum;
    }
}
