package offtape.cli.command;

import java.math.BigDecimal;
import java.util.Locale;
import offtape.cli.terminal.Terminal;
import offtape.core.text.Phrases;
import offtape.core.unit.Digits;
import offtape.core.unit.Quantity;

/**
 * How the commands speak on the terminal: texts by key, sentences of results, and figures with no
 * more digits than their uncertainty carries, all in the reader's language.
 */
final class Speech {

    private final Phrases phrases;

    private Speech(Phrases phrases) {
        this.phrases = phrases;
    }

    /** The language of a terminal. */
    static Speech of(Terminal terminal) {
        return new Speech(terminal.phrases(Speech.class));
    }

    /** A text; numbers among the arguments are written as the language does. */
    String say(String key, Object... arguments) {
        return phrases.say(key, arguments);
    }

    /** A sentence or a word out of results, which is English there. */
    String told(String english) {
        return phrases.told(english);
    }

    /** A known figure with its unit, such as {@code 0.156 %}, or "unknown". */
    String text(Quantity q) {
        return q.isKnown() ? value(q) + " " + q.unit() : say("figures.unknown");
    }

    /** As {@link #text(Quantity)}, with a plus before what is more than nought. */
    String signed(Quantity q) {
        return q.isKnown() ? signedValue(q) + " " + q.unit() : say("figures.unknown");
    }

    /** That a figure is unknown, and why. */
    String unknown(Quantity q) {
        return say("figures.unknown-because", told(q.reason()));
    }

    /** The number of a known figure alone. */
    String value(Quantity q) {
        return number(q.value(), q.uncertainty());
    }

    /** The number of a known figure alone, with a plus before what is more than nought. */
    String signedValue(Quantity q) {
        String value = value(q);
        return Digits.rounded(q.value(), Digits.decimals(q.uncertainty())).signum() > 0
                ? "+" + value
                : value;
    }

    /** The uncertainty of a known figure, such as {@code ± 0.004}. */
    String uncertainty(Quantity q) {
        int decimals = Digits.decimals(q.uncertainty());
        BigDecimal half = Digits.rounded(q.uncertainty(), decimals);
        return half.signum() == 0
                ? say(
                        "figures.less-than",
                        plain(BigDecimal.ONE.movePointLeft(decimals).toPlainString()))
                : "± " + plain(half.toPlainString());
    }

    /** A number in the digits that its uncertainty allows. */
    String number(double value, double uncertainty) {
        return plain(Digits.rounded(value, Digits.decimals(uncertainty)).toPlainString());
    }

    /** A number in so many significant digits. */
    String significant(double value, int digits) {
        return plain(PlainNumber.of(value, digits));
    }

    /** A number in a format such as {@code %+.1f}; one that rounds to nought carries no sign. */
    String fixed(String format, double number) {
        return plain(
                String.format(Locale.ROOT, format, number)
                        .replaceAll("[-+](?=0(\\.0+)?(?![0-9.]))", ""));
    }

    /** A number as programs write it, as the reader does. */
    String plain(String number) {
        return phrases.number(number);
    }

    /** A frequency in three significant digits: {@code 38.2 Hz}, {@code 15.9 kHz}. */
    String hertz(double hz) {
        return hz < 1000 ? significant(hz, 3) + " Hz" : significant(hz / 1000, 3) + " kHz";
    }
}
