package offtape.report.render;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import offtape.report.result.Session;

/** The frame of every page: head, style, a list of the sections, colophon, script. */
final class Page {

    private Page() {}

    /** A whole page. */
    static String of(String title, Markup opening, List<Section> sections, List<Session> sessions) {
        String script = ChartScript.text();
        Markup out = new Markup().add(head(title, script)).open("body").line();
        out.element("a", "Skip to the contents", "class", "skip", "href", "#main").line();
        out.open("main", "id", "main", "tabindex", "-1").line();
        out.add(opening).add(contents(sections));
        sections.forEach(section -> out.add(section.markup()));
        out.close("main").line().add(colophon(sessions)).add(ChartScript.element(script));
        out.close("body").line().close("html").line();
        return "<!DOCTYPE html>\n" + out;
    }

    private static Markup head(String title, String script) {
        String style = "\n" + styleSheet();
        return PageHead.of(
                title,
                style,
                "script-src "
                        + PagePolicy.source(Markup.SCRIPT_START + script + Markup.SCRIPT_END));
    }

    private static Markup contents(List<Section> sections) {
        Markup out = new Markup().open("nav", "aria-label", "Sections").open("ol").line();
        for (Section section : sections) {
            out.open("li")
                    .element("a", section.heading(), "href", "#" + section.id())
                    .close("li")
                    .line();
        }
        return out.close("ol").close("nav").line();
    }

    private static Markup colophon(List<Session> sessions) {
        Markup out = new Markup().open("footer").line();
        for (Session session : sessions) {
            out.open("p")
                    .text(
                            "Made by "
                                    + (session.software() == null ? "Offtape" : session.software()))
                    .text(" from a recording of " + Words.moment(session.madeAt()) + ".");
            if (Words.isGiven(session.recordingSha256())) {
                out.text(" SHA-256 of the recording: ").element("code", session.recordingSha256());
            }
            out.close("p").line();
        }
        return out.element(
                        "p",
                        "This page is complete in itself: it loads nothing and prints on A4. Its"
                                + " script only reads values off the charts; all else works"
                                + " without it.")
                .line()
                .close("footer")
                .line();
    }

    /** The style sheet that every page carries. */
    static String styleSheet() {
        try (InputStream in = Page.class.getResourceAsStream("report.css")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
