package offtape.report.render;

import java.util.List;

/**
 * A part of a report that answers one question.
 *
 * @param id anchor, unique in the page
 * @param heading the question's subject
 * @param body everything below the heading
 */
record Section(String id, String heading, Markup body) {

    /** The section with its heading. */
    Markup markup() {
        return new Markup()
                .open("section", "id", id, "aria-labelledby", id + "-heading")
                .line()
                .element("h2", heading, "id", id + "-heading")
                .line()
                .open("div", "class", "body")
                .line()
                .add(body)
                .close("div")
                .close("section")
                .line();
    }

    /** One or more drawings with what is to be read from them. */
    static Markup figure(Wording words, String caption, List<Chart> charts) {
        Markup out = new Markup().open("figure").line();
        charts.forEach(chart -> out.add(ChartSvg.draw(words, chart)).line());
        return out.element("figcaption", words.unbroken(caption)).close("figure").line();
    }

    /** A paragraph. */
    static Markup paragraph(Wording words, String text) {
        return new Markup().element("p", words.unbroken(text)).line();
    }
}
