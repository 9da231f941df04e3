package offtape.report.render;

import java.util.List;
import offtape.report.compare.Change;
import offtape.report.compare.Comparison;
import offtape.report.compare.PairWords;
import offtape.report.headline.Subject;
import offtape.report.result.Results;
import offtape.report.result.Session;

/**
 * Two sessions side by side: headline figures with their difference, faults, curves on top of each
 * other.
 */
final class PairPage {

    /** Longer names are cut where they head a column or stand in a cell. */
    static final int MOST_LETTERS = 24;

    private PairPage() {}

    /** The page. */
    static String of(Wording wording, Comparison comparison, Results before, Results after) {
        PairWords words = PairWords.of(comparison);
        Markup opening =
                new Markup()
                        .open("header")
                        .line()
                        .element("p", subject(words, before), "class", "sheet")
                        .line()
                        .element("h1", words.title())
                        .line()
                        .element("p", identity(words, true, before), "class", "identity")
                        .line()
                        .element("p", identity(words, false, after), "class", "identity")
                        .line();
        PairFindings.of(comparison)
                .forEach(f -> opening.element("p", Words.unbroken(f), "class", "findings").line());
        opening.close("header").line().add(table(comparison, words.brief(MOST_LETTERS)).open());
        PairCharts charts = new PairCharts(words, before, after);
        return Page.of(
                words.title() + " – Offtape report",
                opening,
                List.of(PairFaults.of(comparison), charts.response(), charts.distortion()),
                List.of(before.session(), after.session()));
    }

    private static String subject(PairWords words, Results results) {
        if (!words.areMachines()) {
            return "Two measurements side by side";
        }
        return Subject.of(results)
                .words("Two machines side by side", "Two interfaces side by side");
    }

    private static String identity(PairWords words, boolean isFirst, Results results) {
        Session session = results.session();
        boolean isNumbered = words.areNumbered(PairCharts.MOST_LETTERS);
        String number = isFirst ? "First: " : "Second: ";
        String name = isFirst ? words.first() : words.second();
        String who =
                words.areMachines()
                        ? (isNumbered ? number : "") + name
                        : name + ": " + Words.machine(session);
        return who + ", " + Words.moment(session.madeAt()) + ". " + Words.description(session);
    }

    private static DataTable table(Comparison comparison, PairWords words) {
        boolean machines = words.areMachines();
        return new DataTable(
                "Headline figures of both sessions",
                List.of(
                        "Figure",
                        words.first(),
                        words.second(),
                        "Difference",
                        machines ? "Which is better" : "Change"),
                comparison.changes().stream()
                        .map(
                                c ->
                                        List.of(
                                                c.label(),
                                                Numbers.full(c.before(), c.signed()),
                                                Numbers.full(c.after(), c.signed()),
                                                difference(c),
                                                DirectionWords.of(c.direction(), words)))
                        .toList());
    }

    private static String difference(Change c) {
        return c.isKnown() ? Numbers.full(c.difference(), true) : "not known";
    }
}
