package offtape.cli.command;

import java.math.BigDecimal;
import java.util.Locale;
import offtape.core.unit.Digits;
import offtape.core.unit.Quantity;

/** Figures in words for the terminal, with no more digits than their uncertainty carries. */
final class Figures {

    private static final String UNKNOWN = "unknown";

    private Figures() {}

    /** A known figure with its unit, such as {@code 0.156 %}, or "unknown". */
    static String text(Quantity q) {
        return q.isKnown() ? value(q) + " " + q.unit() : UNKNOWN;
    }

    /** As {@link #text(Quantity)}, with a plus before what is more than nought. */
    static String signed(Quantity q) {
        return q.isKnown() ? signedValue(q) + " " + q.unit() : UNKNOWN;
    }

    /** The number of a known figure alone. */
    static String value(Quantity q) {
        return number(q.value(), q.uncertainty());
    }

    /** The number of a known figure alone, with a plus before what is more than nought. */
    static String signedValue(Quantity q) {
        String value = value(q);
        return Digits.rounded(q.value(), Digits.decimals(q.uncertainty())).signum() > 0
                ? "+" + value
                : value;
    }

    /** The uncertainty of a known figure, such as {@code ± 0.004}. */
    static String uncertainty(Quantity q) {
        int decimals = Digits.decimals(q.uncertainty());
        BigDecimal half = Digits.rounded(q.uncertainty(), decimals);
        return half.signum() == 0
                ? "± less than " + BigDecimal.ONE.movePointLeft(decimals).toPlainString()
                : "± " + half.toPlainString();
    }

    /** A number in the digits that its uncertainty allows. */
    static String number(double value, double uncertainty) {
        return Digits.rounded(value, Digits.decimals(uncertainty)).toPlainString();
    }

    /** Numbers in a format; one that rounds to nought carries no sign. */
    static String text(String format, Object... numbers) {
        return String.format(Locale.ROOT, format, numbers)
                .replaceAll("[-+](?=0(\\.0+)?(?![0-9.]))", "");
    }
}
