package offtape.report.render;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import offtape.core.unit.Digits;
import offtape.core.unit.Quantity;

/**
 * Numbers as a reader sees them: a proper minus sign, no more digits than the uncertainty carries
 * ({@link Digits}), kilohertz from 1000 Hz.
 */
final class Numbers {

    private static final String MINUS = "\u2212";
    private static final String NO_BREAK = "\u00a0";
    private static final int MOST_TOLD = 6;

    private Numbers() {}

    /** {@code value} with so many decimals; zero never carries a sign, no number gives a dash. */
    static String decimal(double value, int decimals) {
        if (!Double.isFinite(value)) {
            return DataTable.NOTHING;
        }
        return plain(new BigDecimal(value).setScale(decimals, RoundingMode.HALF_UP));
    }

    /** As {@link #decimal}, with a plus sign before positive values. */
    static String signed(double value, int decimals) {
        if (!Double.isFinite(value)) {
            return DataTable.NOTHING;
        }
        return plus(new BigDecimal(value).setScale(decimals, RoundingMode.HALF_UP));
    }

    /** {@code value} with so many significant digits, without trailing zeros. */
    static String significant(double value, int digits) {
        if (!Double.isFinite(value)) {
            return DataTable.NOTHING;
        }
        BigDecimal rounded =
                new BigDecimal(value).round(new MathContext(digits, RoundingMode.HALF_UP));
        return plain(rounded.signum() == 0 ? BigDecimal.ZERO : rounded.stripTrailingZeros());
    }

    /** A frequency in three significant digits: {@code 38.2 Hz}, {@code 15.9 kHz}. */
    static String frequency(double hz) {
        return Math.abs(hz) < 1000
                ? significant(hz, 3) + NO_BREAK + "Hz"
                : significant(hz / 1000, 3) + NO_BREAK + "kHz";
    }

    /** A level in words: {@code +6.4 dB}. */
    static String level(double levelDb) {
        return signed(levelDb, 1) + NO_BREAK + "dB";
    }

    /** A number and its unit, kept on one line. */
    static String withUnit(String number, String unit) {
        return number + NO_BREAK + unit;
    }

    /** A known figure without its uncertainty, in the digits that the uncertainty allows. */
    static String value(Quantity figure, boolean signed) {
        Scaled scaled = Scaled.of(figure);
        BigDecimal value = Digits.rounded(scaled.value, scaled.scale);
        return (signed ? plus(value) : plain(value)) + NO_BREAK + scaled.unit;
    }

    /** The uncertainty of a known figure: {@code ± 0.3 dB}. */
    static String uncertainty(Quantity figure) {
        Scaled scaled = Scaled.of(figure);
        BigDecimal half = Digits.rounded(scaled.uncertainty, scaled.scale);
        String shown =
                half.signum() == 0
                        ? "< " + plain(BigDecimal.ONE.movePointLeft(scaled.scale))
                        : plain(half);
        return "±" + NO_BREAK + shown + NO_BREAK + scaled.unit;
    }

    /**
     * How many decimals an uncertainty allows, at most four; below 0 for tens and hundreds.
     *
     * @param uncertainty expanded, not negative; what is not finite allows none
     */
    static int decimals(double uncertainty) {
        return Double.isFinite(uncertainty) ? Digits.decimals(uncertainty) : 0;
    }

    /** How many decimals so many significant digits of a value take, 0 to six. */
    static int decimals(double value, int digits) {
        if (!Double.isFinite(value) || value == 0) {
            return 0;
        }
        BigDecimal rounded =
                new BigDecimal(value).round(new MathContext(digits, RoundingMode.HALF_UP));
        int exponent = rounded.precision() - rounded.scale() - 1;
        return Math.max(0, Math.min(MOST_TOLD, digits - 1 - exponent));
    }

    /** A known figure with its uncertainty, or the reason why it is unknown. */
    static String full(Quantity figure, boolean signed) {
        return figure.isKnown()
                ? value(figure, signed) + " " + uncertainty(figure)
                : "unknown: " + figure.reason();
    }

    private static String plain(BigDecimal value) {
        return value.toPlainString().replace("-", MINUS);
    }

    private static String plus(BigDecimal value) {
        return value.signum() > 0 ? "+" + plain(value) : plain(value);
    }

    /** A figure in the unit it is shown in, and the decimal place where it ends. */
    private record Scaled(double value, double uncertainty, String unit, int scale) {

        static Scaled of(Quantity figure) {
            boolean kilo = "Hz".equals(figure.unit()) && Math.abs(figure.value()) >= 1000;
            double factor = kilo ? 1e-3 : 1;
            double uncertainty = figure.uncertainty() * factor;
            return new Scaled(
                    figure.value() * factor,
                    uncertainty,
                    kilo ? "kHz" : figure.unit(),
                    Digits.decimals(uncertainty));
        }
    }
}
