package offtape.report.render;

import java.util.Set;

/**
 * How a point of a chart is told: the words for its place and for its value, with {@code #} where
 * the number goes, a line each.
 */
final class ReadingWords {

    /** Quantities whose unit says enough, as does that of the chart's title. */
    private static final Set<String> PLAIN =
            Set.of("page.axis-frequency", "page.axis-time", "page.axis-rate", "page.axis-since");

    private ReadingWords() {}

    static String of(Wording words, Chart chart) {
        return part(words, chart, chart.x()) + "\n" + part(words, chart, chart.y());
    }

    /** {@code record level # dB re reference}, {@code # s}; nothing of an axis that only ranks. */
    private static String part(Wording words, Chart chart, Axis axis) {
        if (axis.ranks()) {
            return "";
        }
        boolean isKnown =
                axis.quantity().equals(chart.title())
                        || PLAIN.stream()
                                .anyMatch(
                                        key ->
                                                axis.quantity()
                                                        .equals(Axis.quantity(words.say(key))));
        String quantity = isKnown ? "" : words.small(axis.quantity()) + " ";
        String unit = axis.unit().isEmpty() ? "" : "\u00a0" + axis.unit();
        return quantity + "#" + unit;
    }
}
