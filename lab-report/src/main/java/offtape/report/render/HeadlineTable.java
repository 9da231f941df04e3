package offtape.report.render;

import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.result.Results;

/** The headline figures of one session as a table with a column for each channel. */
final class HeadlineTable {

    private HeadlineTable() {}

    /** The table. The roles keep it a table for screen readers where narrow screens restack it. */
    static Markup of(Results results) {
        Markup out =
                new Markup()
                        .open("table", "class", "headline", "role", "table")
                        .element("caption", "Headline figures")
                        .open("thead", "role", "rowgroup")
                        .open("tr", "role", "row")
                        .element("th", "Figure", "scope", "col", "role", "columnheader")
                        .element("th", "Left", "scope", "col", "role", "columnheader")
                        .element("th", "Right", "scope", "col", "role", "columnheader")
                        .close("tr")
                        .close("thead")
                        .open("tbody", "role", "rowgroup")
                        .line();
        Headline.of(results).forEach(h -> out.add(row(h)).line());
        return out.close("tbody").close("table");
    }

    private static Markup row(Headline headline) {
        Markup out =
                new Markup()
                        .open("tr", "role", "row")
                        .open("th", "scope", "row", "role", "rowheader")
                        .element("span", headline.name(), "class", "name")
                        .text(" ")
                        .element("span", headline.plain(), "class", "plain")
                        .close("th");
        List<Quantity> figures = headline.figures();
        boolean sameReason =
                headline.isPerChannel()
                        && !figures.get(0).isKnown()
                        && figures.get(0).equals(figures.get(1));
        if (!headline.isPerChannel() || sameReason) {
            return out.add(cell(figures.get(0), headline.signed(), "Both", "colspan", "2"))
                    .close("tr");
        }
        return out.add(cell(figures.get(0), headline.signed(), "Left"))
                .add(cell(figures.get(1), headline.signed(), "Right"))
                .close("tr");
    }

    private static Markup cell(
            Quantity figure, boolean signed, String channel, String... attributes) {
        String[] all = new String[attributes.length + 4];
        System.arraycopy(attributes, 0, all, 4, attributes.length);
        all[0] = "class";
        all[1] = attributes.length > 0 ? "figure both" : "figure";
        all[2] = "role";
        all[3] = "cell";
        return new Markup()
                .open("td", all)
                .element("span", channel, "class", "channel", "aria-hidden", "true")
                .add(figure(figure, signed))
                .close("td");
    }

    /** A figure with its uncertainty, or the reason why it is unknown. */
    static Markup figure(Quantity figure, boolean signed) {
        if (!figure.isKnown()) {
            return new Markup()
                    .element("span", "unknown", "class", "unknown")
                    .text(" ")
                    .element("span", figure.reason(), "class", "reason");
        }
        return new Markup()
                .element("span", Numbers.value(figure, signed), "class", "value")
                .text(" ")
                .element("span", Numbers.uncertainty(figure), "class", "uncertainty");
    }
}
