package offtape.cli.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import offtape.core.unit.Quantity;
import offtape.report.compare.Change;
import offtape.report.compare.Change.Direction;
import offtape.report.compare.Comparison;
import offtape.report.compare.FaultChange;
import offtape.report.compare.PairWords;

/** A comparison as lines for the terminal. */
final class CompareWords {

    private CompareWords() {}

    /** Decision, figures, faults, and what should be known beside. */
    static List<String> lines(Comparison comparison) {
        PairWords words = PairWords.of(comparison);
        List<String> lines = new ArrayList<>();
        if (words.areMachines()) {
            lines.add("Two machines: " + words.first() + " and " + words.second() + ".");
        }
        if (comparison.decision().differ()) {
            lines.add(words.decisions(comparison.decision()));
        }
        lines.addAll(figures(comparison, words));
        if (comparison.faults().isEmpty()) {
            lines.add(words.noFaults(comparison.decision()));
        }
        comparison.faults().forEach(f -> lines.add(line(f, words)));
        comparison.notes().forEach(n -> lines.add("Mind: " + n));
        return lines;
    }

    private static List<String> figures(Comparison comparison, PairWords words) {
        List<String> lines = new ArrayList<>();
        for (Direction direction : List.of(Direction.BETTER, Direction.WORSE)) {
            comparison.gone(direction).forEach(c -> lines.add(line(c, words)));
        }
        if (lines.isEmpty()) {
            lines.add(
                    "No headline figure "
                            + (words.areMachines() ? "differs" : "changed")
                            + " by more than the uncertainty of the difference.");
        }
        return lines;
    }

    private static String line(Change c, PairWords words) {
        Quantity d = c.difference();
        String before = Figures.value(c.before());
        String after = Figures.value(c.after()) + " " + d.unit();
        String figures =
                words.areMachines()
                        ? before
                                + " "
                                + d.unit()
                                + " "
                                + words.onFirst()
                                + ", "
                                + after
                                + " "
                                + words.onSecond()
                        : before + " to " + after;
        return String.format(
                Locale.ROOT,
                "%s %s: %s, a difference of %s %s",
                words.areMachines()
                        ? words.better(c.direction()) + ":"
                        : String.format(Locale.ROOT, "%-7s", words.better(c.direction())),
                c.label(),
                figures,
                Figures.signedValue(d),
                Figures.uncertainty(d));
    }

    private static String line(FaultChange f, PairWords words) {
        String reason = f.reason() == null ? "" : ". " + f.reason();
        return String.format(
                Locale.ROOT,
                "Fault, %s: %s; %s %s, %s %s%s",
                words.outcome(f),
                f.label(),
                words.likelihood(f, f.before()),
                words.onFirst(),
                words.likelihood(f, f.after()),
                words.onSecond(),
                reason);
    }
}
