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
    static String of(
            Wording words,
            String title,
            Markup opening,
            List<Section> sections,
            List<Session> sessions) {
        String script = ChartScript.text();
        Markup out = new Markup().add(head(words, title, script)).open("body").line();
        out.element("a", words.say("page.skip"), "class", "skip", "href", "#main").line();
        out.open("main", "id", "main", "tabindex", "-1").line();
        out.add(opening).add(contents(words, sections));
        sections.forEach(section -> out.add(section.markup()));
        out.close("main")
                .line()
                .add(colophon(words, sessions))
                .add(ChartScript.element(words, script));
        out.close("body").line().close("html").line();
        return "<!DOCTYPE html>\n" + out;
    }

    private static Markup head(Wording words, String title, String script) {
        String style = "\n" + styleSheet();
        return PageHead.of(
                words.language(),
                title,
                style,
                "script-src "
                        + PagePolicy.source(Markup.SCRIPT_START + script + Markup.SCRIPT_END));
    }

    private static Markup contents(Wording words, List<Section> sections) {
        Markup out =
                new Markup()
                        .open("nav", "aria-label", words.say("page.sections"))
                        .open("ol")
                        .line();
        for (Section section : sections) {
            out.open("li")
                    .element("a", section.heading(), "href", "#" + section.id())
                    .close("li")
                    .line();
        }
        return out.close("ol").close("nav").line();
    }

    private static Markup colophon(Wording words, List<Session> sessions) {
        Markup out = new Markup().open("footer").line();
        for (Session session : sessions) {
            out.open("p")
                    .text(
                            words.say(
                                    "page.made-by",
                                    session.software() == null ? "Offtape" : session.software(),
                                    words.moment(session.madeAt())));
            if (Wording.isGiven(session.recordingSha256())) {
                out.text(" " + words.say("page.sha256") + " ")
                        .element("code", session.recordingSha256());
            }
            out.close("p").line();
        }
        return out.element("p", words.say("page.complete")).line().close("footer").line();
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
