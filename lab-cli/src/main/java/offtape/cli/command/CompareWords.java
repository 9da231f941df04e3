package offtape.cli.command;

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
                PlainNumber.of(c.before().value(), 4),
                PlainNumber.of(c.after().value(), 4),
                d.unit(),
                PlainNumber.signed(d.value(), 3),
                PlainNumber.of(d.uncertainty(), 2));
    }
}
