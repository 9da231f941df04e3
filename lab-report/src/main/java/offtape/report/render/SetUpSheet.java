package offtape.report.render;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import offtape.core.programme.CueSheet;
import offtape.core.text.Language;

/**
 * One printed page to have at the machine: what to clean, switch off, connect and set before a
 * programme is played, what to beware of, and when which part of it sounds.
 */
public final class SetUpSheet {

    /** Name of the page beside a programme. */
    public static final String NAME = "set-up.html";

    private SetUpSheet() {}

    /** The page of a programme in its reader's language; complete in itself. */
    public static String html(CueSheet sheet, Language language) {
        Wording words = Wording.in(language);
        SetUpWords said = new SetUpWords(words);
        String title = words.say("setup.title");
        Markup out =
                new Markup()
                        .add(PageHead.of(language, title, "\n" + styleSheet()))
                        .open("body")
                        .line()
                        .open("main")
                        .line();
        out.open("header")
                .element("h1", title)
                .element("p", said.programme(sheet), "class", "programme");
        fields(out, said);
        out.close("header").line();
        part(out, "cautions", words.say("setup.cautions"), said.cautions(), "ul");
        out.open("div", "class", "steps").line();
        part(out, "clean", words.say("setup.clean"), said.clean(), "ol");
        part(out, "off", words.say("setup.off"), said.switchOff(), "ul");
        wiring(out, said);
        part(out, "levels", words.say("setup.levels"), said.levels(sheet), "ol");
        modes(out, said);
        out.close("div").line();
        out.add(new CueTimes(words).table(sheet));
        out.close("main").line().close("body").line().close("html").line();
        return "<!DOCTYPE html>\n" + out;
    }

    private static void fields(Markup out, SetUpWords said) {
        out.open("dl", "class", "fields").line();
        for (String field : said.fields()) {
            out.open("div").element("dt", field).element("dd", "").close("div").line();
        }
        out.close("dl");
    }

    private static void part(
            Markup out, String id, String heading, List<String> items, String list) {
        open(out, id, heading).open(list).line();
        items.forEach(i -> out.element("li", i).line());
        out.close(list).close("section").line();
    }

    private static Markup open(Markup out, String id, String heading) {
        String label = id + "-heading";
        return out.open("section", "class", id, "aria-labelledby", label)
                .element("h2", heading, "id", label)
                .line();
    }

    private static void wiring(Markup out, SetUpWords said) {
        open(out, "wiring", said.words().say("setup.wiring"));
        for (List<String> way : said.wiring()) {
            out.open("p", "class", "way")
                    .element("span", way.get(0))
                    .element("span", "\u2192", "class", "to")
                    .element("span", way.get(1))
                    .close("p")
                    .line();
        }
        out.element("p", said.words().say("setup.wiring-note")).close("section").line();
    }

    private static void modes(Markup out, SetUpWords said) {
        open(out, "modes", said.words().say("setup.modes")).open("dl").line();
        for (List<String> mode : said.modes()) {
            out.open("dt")
                    .text(mode.get(0) + " ")
                    .element("code", mode.get(1))
                    .close("dt")
                    .element("dd", mode.get(2))
                    .line();
        }
        out.close("dl").close("section").line();
    }

    private static String styleSheet() {
        try (InputStream in = SetUpSheet.class.getResourceAsStream("set-up.css")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
