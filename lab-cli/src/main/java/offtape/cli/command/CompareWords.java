package offtape.cli.command;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import offtape.core.unit.Quantity;
import offtape.report.compare.Change;
import offtape.report.compare.Change.Direction;
import offtape.report.compare.Comparison;

/** A comparison as lines for the terminal. */
final class CompareWords {

    private CompareWords() {}

    /** What is better, what is worse, and what should be known beside. */
    static List<String> lines(Comparison comparison) {
        List<String> lines = new ArrayList<>();
        for (Direction direction : List.of(Direction.BETTER, Direction.WORSE)) {
            for (Change c : comparison.gone(direction)) {
                lines.add(line(c, direction == Direction.BETTER ? "better" : "worse"));
            }
        }
        if (lines.isEmpty()) {
            lines.add("No headline figure changed by more than the uncertainty of the difference.");
        }
        comparison.notes().forEach(n -> lines.add("Mind: " + n));
        return lines;
    }

    private static String line(Change c, String word) {
        Quantity d = c.difference();
        return String.format(
                Locale.ROOT,
                "%-7s %s: %s to %s %s, a difference of %s ± %s",
                word,
                c.label(),
                plain(c.before().value(), 4),
                plain(c.after().value(), 4),
                d.unit(),
                (d.value() > 0 ? "+" : "") + plain(d.value(), 3),
                plain(d.uncertainty(), 2));
    }

    private static String plain(double value, int digits) {
        return new BigDecimal(value)
                .round(new MathContext(digits, RoundingMode.HALF_EVEN))
                .toPlainString();
    }
}
