package offtape.report.render;

import java.util.Set;

/**
 * How a point of a chart is told: the words for its place and for its value, with {@code #} where
 * the number goes, a line each.
 */
final class ReadingWords {

    /** Quantities whose unit says enough, as does that of the chart's title. */
    private static final Set<String> PLAIN =
            Set.of("Frequency", "Time", "Rate of the wavering", "Since the first session");

    private ReadingWords() {}

    static String of(Chart chart) {
        return part(chart, chart.x()) + "\n" + part(chart, chart.y());
    }

    /** {@code record level # dB re reference}, {@code # s}; nothing of an axis that only ranks. */
    private static String part(Chart chart, Axis axis) {
        if (axis.ranks()) {
            return "";
        }
        boolean isKnown = PLAIN.contains(axis.quantity()) || axis.quantity().equals(chart.title());
        String quantity = isKnown ? "" : Words.small(axis.quantity()) + " ";
        String unit = axis.unit().isEmpty() ? "" : "\u00a0" + axis.unit();
        return quantity + "#" + unit;
    }
}
