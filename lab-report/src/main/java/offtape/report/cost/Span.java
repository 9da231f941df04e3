package offtape.report.cost;

import java.util.Locale;
import offtape.core.text.Sentences;

/**
 * A sum of money or a time that is known between two ends.
 *
 * @param low at least so much
 * @param high at most so much, or null if that is not known
 */
public record Span(double low, Double high) {

    private static final Sentences SAID = Sentences.near(Span.class);

    /** How much of a span is known. */
    enum Shape {
        /** Both ends, and they are the same. */
        EXACT,
        /** Both ends. */
        RANGE,
        /** The lower end only. */
        LEAST
    }

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

    /** How much of it is known. */
    Shape shape() {
        if (high == null) {
            return Shape.LEAST;
        }
        return high == low ? Shape.EXACT : Shape.RANGE;
    }

    /** In words without a unit: {@code 20}, {@code 20 to 35.5}, {@code at least 20}. */
    String words() {
        return switch (shape()) {
            case LEAST -> SAID.say("at-least", number(low));
            case EXACT -> number(low);
            case RANGE -> number(low) + " to " + number(high);
        };
    }

    /** With two decimals at most. */
    static String number(double value) {
        return String.format(Locale.ROOT, "%.2f", value).replaceAll("\\.?0+$", "");
    }
}
