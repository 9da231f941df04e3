package offtape.report.render;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import offtape.report.compare.Change;
import offtape.report.compare.Change.Direction;
import offtape.report.compare.Comparison;
import offtape.report.result.Results;

/**
 * Two sessions side by side: headline figures with their difference, curves on top of each other.
 */
final class PairPage {

    private PairPage() {}

    /** The page. */
    static String of(Comparison comparison, Results before, Results after) {
        String title = title(comparison);
        Markup opening =
                new Markup()
                        .open("header")
                        .line()
                        .element("p", "Two measurements side by side", "class", "sheet")
                        .line()
                        .element("h1", title)
                        .line()
                        .element("p", session("Before", before), "class", "identity")
                        .line()
                        .element("p", session("After", after), "class", "identity")
                        .line();
        findings(comparison).forEach(f -> opening.element("p", f, "class", "findings").line());
        opening.close("header").line().add(table(comparison).open());
        return Page.of(
                title + " – Offtape report",
                opening,
                List.of(PairCharts.response(before, after), PairCharts.distortion(before, after)),
                List.of(before.session(), after.session()));
    }

    private static String title(Comparison comparison) {
        String first = Words.machine(comparison.before());
        String second = Words.machine(comparison.after());
        return first.equals(second) ? first + ": before and after" : first + " and " + second;
    }

    private static String session(String which, Results results) {
        return which
                + ": "
                + Words.machine(results.session())
                + ", "
                + Words.moment(results.session().madeAt())
                + ". "
                + Words.description(results.session());
    }

    /** What is better, what is worse, and how far that can be told; one sentence each. */
    private static List<String> findings(Comparison comparison) {
        List<String> lines = new ArrayList<>();
        List<Change> better = comparison.gone(Direction.BETTER);
        List<Change> worse = comparison.gone(Direction.WORSE);
        long known = comparison.changes().stream().filter(Change::isKnown).count();
        if (known == 0) {
            lines.add("No headline figure is known in both sessions.");
        } else if (better.isEmpty() && worse.isEmpty()) {
            lines.add(
                    "None of the "
                            + known
                            + " headline figures known in both sessions changed by more than the"
                            + " uncertainty of the difference.");
        }
        lines.addAll(named("Better: ", better));
        lines.addAll(named("Worse: ", worse));
        lines.addAll(comparison.notes());
        lines.add(
                comparison.repeats() < 2
                        ? "How much the figures scatter from one measuring to the next is not known:"
                                + " measure twice with nothing done in between."
                        : "How much the figures scatter is taken from "
                                + comparison.repeats()
                                + " measurings with nothing done in between.");
        return lines;
    }

    /** Each figure once; the channel where it is one of them only. */
    private static List<String> named(String head, List<Change> changes) {
        Map<String, List<Change>> byName =
                changes.stream()
                        .collect(
                                Collectors.groupingBy(
                                        Change::name, LinkedHashMap::new, Collectors.toList()));
        String names =
                byName.values().stream()
                        .map(all -> all.size() > 1 ? all.get(0).name() : all.get(0).label())
                        .collect(Collectors.joining("; "));
        return changes.isEmpty() ? List.of() : List.of(head + names + ".");
    }

    private static DataTable table(Comparison comparison) {
        return new DataTable(
                "Headline figures of both sessions",
                List.of("Figure", "Before", "After", "Difference", "Change"),
                comparison.changes().stream()
                        .map(
                                c ->
                                        List.of(
                                                c.label(),
                                                Numbers.full(c.before(), c.signed()),
                                                Numbers.full(c.after(), c.signed()),
                                                difference(c),
                                                DirectionWords.of(c.direction(), "change")))
                        .toList());
    }

    private static String difference(Change c) {
        return c.isKnown() ? Numbers.full(c.difference(), true) : "not known";
    }
}
