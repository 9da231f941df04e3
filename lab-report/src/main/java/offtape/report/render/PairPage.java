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
 *
 * @param words in the reader's language
 * @param pair what the two are called
 */
record PairPage(Wording words, PairWords pair) {

    /** Longer names are cut where they head a column or stand in a cell. */
    static final int MOST_LETTERS = 24;

    /** The page. */
    static String of(Wording words, Comparison comparison, Results before, Results after) {
        return new PairPage(words, PairWords.of(comparison, words.language()))
                .page(comparison, before, after);
    }

    private String page(Comparison comparison, Results before, Results after) {
        Markup opening =
                new Markup()
                        .open("header")
                        .line()
                        .element("p", subject(before), "class", "sheet")
                        .line()
                        .element("h1", pair.title())
                        .line()
                        .element("p", identity(true, before), "class", "identity")
                        .line()
                        .element("p", identity(false, after), "class", "identity")
                        .line();
        new PairFindings(words, pair, comparison)
                .sentences()
                .forEach(f -> opening.element("p", words.unbroken(f), "class", "findings").line());
        opening.close("header").line().add(table(comparison, pair.brief(MOST_LETTERS)).open());
        PairCharts charts = new PairCharts(words, pair, before, after);
        return Page.of(
                words,
                words.say("pair.page-title", pair.title()),
                opening,
                List.of(
                        new PairFaults(words, pair).of(comparison),
                        charts.response(),
                        charts.distortion()),
                List.of(before.session(), after.session()));
    }

    private String subject(Results results) {
        return words.say(
                pair.areMachines()
                        ? Subject.of(results).words("pair.two-machines", "pair.two-interfaces")
                        : "pair.two-measurements");
    }

    private String identity(boolean isFirst, Results results) {
        Session session = results.session();
        return words.say(
                "pair.identity",
                who(isFirst, session),
                words.moment(session.madeAt()),
                words.description(session));
    }

    private String who(boolean isFirst, Session session) {
        String name = isFirst ? pair.first() : pair.second();
        if (!pair.areMachines()) {
            return words.say("pair.who", name, words.machine(session));
        }
        boolean isNumbered = pair.areNumbered(PairCharts.MOST_LETTERS);
        return isNumbered ? words.say(isFirst ? "pair.who-first" : "pair.who-second", name) : name;
    }

    private DataTable table(Comparison comparison, PairWords brief) {
        return new DataTable(
                words.say("pair.figures"),
                List.of(
                        words.say("pair.column-figure"),
                        brief.first(),
                        brief.second(),
                        words.say("pair.column-difference"),
                        words.say(
                                pair.areMachines() ? "pair.column-better" : "pair.column-change")),
                comparison.changes().stream()
                        .map(
                                c ->
                                        List.of(
                                                FigureNames.of(words, c.name(), c.channel()),
                                                words.full(c.before(), c.signed()),
                                                words.full(c.after(), c.signed()),
                                                difference(c),
                                                DirectionWords.of(words, c.direction(), brief)))
                        .toList());
    }

    private String difference(Change c) {
        return c.isKnown()
                ? words.full(c.difference(), true)
                : words.say("pair.difference-unknown");
    }
}
