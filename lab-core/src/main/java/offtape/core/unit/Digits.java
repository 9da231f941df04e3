package offtape.core.unit;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * How many digits of a figure mean something: no more than its uncertainty carries, which is told
 * in two digits if it starts with 1 or 2 and the second is not 0, and in one otherwise. Common
 * practice (the Guide to the Expression of Uncertainty in Measurement, JCGM 100:2008, 7.2.6, asks
 * for two at most).
 */
public final class Digits {

    private static final int MOST_DECIMALS = 4;

    private Digits() {}

    /**
     * How many decimals a figure is told with, at most four; below 0 for tens and hundreds.
     *
     * @param uncertainty expanded uncertainty, 0 or more, finite
     */
    public static int decimals(double uncertainty) {
        if (uncertainty == 0) {
            return MOST_DECIMALS;
        }
        BigDecimal two = round(uncertainty, 2);
        String digits = two.unscaledValue().toString();
        boolean small = digits.length() == 2 && digits.matches("[12][1-9]");
        int decimals = small ? 1 - exponent(two) : -exponent(round(uncertainty, 1));
        return Math.min(decimals, MOST_DECIMALS);
    }

    /** A value with so many decimals, halves away from nought; below 0 for tens and hundreds. */
    public static BigDecimal rounded(double value, int decimals) {
        return new BigDecimal(value).setScale(decimals, RoundingMode.HALF_UP);
    }

    private static int exponent(BigDecimal value) {
        return value.precision() - value.scale() - 1;
    }

    private static BigDecimal round(double value, int digits) {
        return new BigDecimal(value).round(new MathContext(digits, RoundingMode.HALF_UP));
    }
}
