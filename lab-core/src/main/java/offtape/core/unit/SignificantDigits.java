package offtape.core.unit;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers rounded to significant decimal digits. */
public final class SignificantDigits {

    /** Powers of ten up to here are exact as doubles, and so is the quotient's nearest double. */
    private static final int EXACT_POWER = 22;

    private static final double[] POWERS = powers();

    /** A product this near to the middle between two numbers is decided by exact arithmetic. */
    private static final double UNSURE = 1e-4;

    private SignificantDigits() {}

    private static double[] powers() {
        double[] powers = new double[EXACT_POWER + 1];
        double power = 1;
        for (int i = 0; i <= EXACT_POWER; i++) {
            powers[i] = power;
            power *= 10;
        }
        return powers;
    }

    /**
     * The double nearest to the decimal number that a value rounds to, halves to even.
     *
     * @param value finite
     * @param digits 1 to 12
     */
    public static double rounded(double value, int digits) {
        if (value == 0) {
            return 0;
        }
        int decimals = digits - 1 - (int) Math.floor(Math.log10(Math.abs(value)));
        if (decimals < 0 || decimals > EXACT_POWER) {
            return exactly(value, digits);
        }
        // The product errs by less than 2^-53 of itself, far less than is set aside around halves.
        // The logarithm is exact at powers of ten and nowhere falls, so it can be a digit off only
        // just below a power, where one digit fewer rounds to the same power.
        double scaled = value * POWERS[decimals];
        double size = Math.abs(scaled);
        double beyondHalf = size - Math.floor(size) - 0.5;
        boolean isSure = Math.abs(beyondHalf) > UNSURE;
        return isSure ? Math.rint(scaled) / POWERS[decimals] : exactly(value, digits);
    }

    private static double exactly(double value, int digits) {
        return new BigDecimal(value)
                .round(new MathContext(digits, RoundingMode.HALF_EVEN))
                .doubleValue();
    }
}
