package offtape.report.render;

import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.headline.Headline;
import offtape.report.result.Results;

/** The headline figures of one session as tables. */
record HeadlineTable(Wording words) {

    /** Two tables: figures of each channel, and figures of the machine as a whole. */
    static Markup of(Wording words, Results results) {
        return new HeadlineTable(words).tables(results);
    }

    private Markup tables(Results results) {
        List<Headline> all = Headline.of(results);
        return new Markup()
                .add(
                        table(
                                words.say("session.each-channel"),
                                List.of(words.say("session.left"), words.say("session.right")),
                                all.stream().filter(Headline::isPerChannel).toList()))
                .add(
                        table(
                                words.say("session.both-together"),
                                List.of(words.say("session.figure")),
                                all.stream().filter(h -> !h.isPerChannel()).toList()));
    }

    /** The roles keep it a table for screen readers where narrow screens restack it. */
    private Markup table(String caption, List<String> heads, List<Headline> rows) {
        Markup out =
                new Markup()
                        .open("table", "class", "headline", "role", "table")
                        .element("caption", words.say("session.headline-figures", caption))
                        .open("thead", "role", "rowgroup")
                        .open("tr", "role", "row")
                        .element("th", caption, "scope", "col", "role", "columnheader");
        heads.forEach(h -> out.element("th", h, "scope", "col", "role", "columnheader"));
        out.close("tr").close("thead").open("tbody", "role", "rowgroup").line();
        rows.forEach(h -> out.add(row(h, heads)).line());
        return out.close("tbody").close("table").line();
    }

    private Markup row(Headline headline, List<String> heads) {
        Markup out =
                new Markup()
                        .open("tr", "role", "row")
                        .open("th", "scope", "row", "role", "rowheader")
                        .element("span", words.told(headline.name()), "class", "name")
                        .text(" ")
                        .element("span", words.told(headline.plain()), "class", "plain")
                        .close("th");
        List<Quantity> figures = headline.figures();
        if (saysOneThing(figures)) {
            String span = Integer.toString(heads.size());
            return out.open("td", "class", "both", "role", "cell", "colspan", span)
                    .add(figure(figures.get(0), headline.signed()))
                    .close("td")
                    .close("tr");
        }
        for (int i = 0; i < figures.size(); i++) {
            out.open("td", "role", "cell")
                    .element("span", heads.get(i), "class", "channel", "aria-hidden", "true")
                    .add(figure(figures.get(i), headline.signed()))
                    .close("td");
        }
        return out.close("tr");
    }

    /** One figure, or two that are unknown for the same reason. */
    private static boolean saysOneThing(List<Quantity> figures) {
        return figures.size() == 1
                || !figures.get(0).isKnown() && figures.get(0).equals(figures.get(1));
    }

    /** A figure with its uncertainty, or the reason why it is unknown. */
    private Markup figure(Quantity figure, boolean signed) {
        if (!figure.isKnown()) {
            return new Markup()
                    .element("span", words.say("session.unknown"), "class", "unknown")
                    .text(" ")
                    .element("span", words.told(figure.reason()), "class", "reason");
        }
        return new Markup()
                .element("span", words.value(figure, signed), "class", "value")
                .text(" ")
                .element("span", words.uncertainty(figure), "class", "uncertainty");
    }
}
