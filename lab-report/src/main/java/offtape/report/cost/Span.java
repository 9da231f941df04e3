package offtape.report.cost;

import java.util.Locale;

/**
 * A sum of money or a time that is known between two ends.
 *
 * @param low at least so much
 * @param high at most so much, or null if that is not known
 */
public record Span(double low, Double high) {

    /** Nothing. */
    static final Span ZERO = new Span(0, 0.0);

    /** Both together; what has no known end leaves the sum without one. */
    Span plus(Span other) {
        return new Span(
                low + other.low, high == null || other.high == null ? null : high + other.high);
    }

    /** So many times as much. */
    Span times(double factor) {
        return new Span(factor * low, high == null ? null : factor * high);
    }

    /** Without an end. */
    Span orMore() {
        return new Span(low, null);
    }

    /** The middle, of a span that has one. */
    double middle() {
        return (low + high) / 2;
    }

    /** In words: {@code 20 EUR}, {@code 20 to 35.5 EUR}, {@code at least 20 EUR}. */
    String words(String unit) {
        String text =
                high == null
                        ? "at least " + number(low)
                        : high == low ? number(low) : number(low) + " to " + number(high);
        return text + " " + unit;
    }

    /** With two decimals at most. */
    static String number(double value) {
        return String.format(Locale.ROOT, "%.2f", value).replaceAll("\\.?0+$", "");
    }
}
