package offtape.report.render;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import offtape.report.result.Results;

/**
 * Two sessions side by side: headline figures with their difference, curves on top of each other.
 */
final class PairPage {

    private PairPage() {}

    /** The page. */
    static String of(Results before, Results after) {
        String title = title(before, after);
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
                        .line()
                        .element("p", finding(before, after), "class", "findings")
                        .close("header")
                        .line()
                        .add(table(before, after).open());
        return Page.of(
                title + " – Offtape report",
                opening,
                List.of(PairCharts.response(before, after), PairCharts.distortion(before, after)),
                List.of(before.session(), after.session()));
    }

    private static String title(Results before, Results after) {
        String first = Words.machine(before.session());
        boolean same = first.equals(Words.machine(after.session()));
        return same ? first + ": before and after" : "Before and after";
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

    private static String finding(Results before, Results after) {
        List<Change> changes = changes(before, after);
        long clear = changes.stream().filter(Change::isClear).count();
        long known = changes.stream().filter(Change::isKnown).count();
        if (known == 0) {
            return "No headline figure is known in both sessions.";
        }
        return clear
                + " of the "
                + known
                + " headline figures known in both sessions changed by more than the uncertainty of"
                + " the difference.";
    }

    private static List<Change> changes(Results before, Results after) {
        List<Headline> first = Headline.of(before);
        List<Headline> second = Headline.of(after);
        List<Change> changes = new ArrayList<>();
        for (Headline headline : first) {
            Optional<Headline> other = Headline.named(second, headline.name());
            for (int c = 0; c < headline.figures().size() && other.isPresent(); c++) {
                String channel = headline.isPerChannel() ? ", " + Find.CHANNELS.get(c) : "";
                changes.add(
                        new Change(
                                headline.name() + channel,
                                headline.signed(),
                                headline.figures().get(c),
                                other.get().figures().get(c)));
            }
        }
        return changes;
    }

    private static DataTable table(Results before, Results after) {
        return new DataTable(
                "Headline figures of both sessions",
                List.of("Figure", "Before", "After", "Difference"),
                changes(before, after).stream()
                        .map(
                                c ->
                                        List.of(
                                                c.name(),
                                                Numbers.full(c.before(), c.signed()),
                                                Numbers.full(c.after(), c.signed()),
                                                c.words()))
                        .toList());
    }
}
