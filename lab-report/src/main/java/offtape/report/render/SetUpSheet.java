package offtape.report.render;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import offtape.core.programme.CueSheet;
import offtape.core.text.Language;
import offtape.core.unit.TapeSpeed;

/**
 * One printed page to have at the machine: what to clean, switch off, connect and set before a
 * programme is played, what to beware of, and when which part of it sounds.
 */
public final class SetUpSheet {

    /** Name of the page beside a programme. */
    public static final String NAME = "set-up.html";

    private static final List<String> FIELDS =
            List.of(
                    "Machine",
                    "Tape",
                    "Speed and equalisation",
                    "Date",
                    "Record level, left and right",
                    "Replay level, left and right");

    private SetUpSheet() {}

    /** The page of a programme; complete in itself. */
    public static String html(CueSheet sheet) {
        Markup out = new Markup().add(head()).open("body").line().open("main").line();
        out.open("header")
                .element("h1", "Set-up sheet")
                .element("p", programme(sheet), "class", "programme");
        fields(out);
        out.close("header").line();
        part(out, "cautions", "Beware", SetUpWords.CAUTIONS, "ul");
        out.open("div", "class", "steps").line();
        part(out, "clean", "1. Clean, in this order", SetUpWords.CLEAN, "ol");
        part(out, "off", "2. Switch off", SetUpWords.SWITCH_OFF, "ul");
        wiring(out);
        part(out, "levels", "4. Set levels", SetUpWords.levels(sheet), "ol");
        modes(out);
        out.close("div").line();
        out.add(CueTimes.table(sheet));
        out.close("main").line().close("body").line().close("html").line();
        return "<!DOCTYPE html>\n" + out;
    }

    private static Markup head() {
        return PageHead.of(Language.ENGLISH, "Set-up sheet", "\n" + styleSheet());
    }

    private static String programme(CueSheet sheet) {
        long seconds = Math.round(sheet.seconds(sheet.frames()));
        return "Programme"
                + (sheet.tapeSpeedMmPerS() == null
                        ? ""
                        : " for " + new TapeSpeed(sheet.tapeSpeedMmPerS()))
                + String.format(
                        Locale.ROOT,
                        ": %d min %02d s, %d Hz; ",
                        seconds / 60,
                        seconds % 60,
                        sheet.sampleRateHz())
                + "reference tone at "
                + level(sheet.referenceDbfs())
                + ", loudest tone at "
                + level(sheet.referenceDbfs() + sheet.loudestDb())
                + ".";
    }

    private static String level(double dbfs) {
        return Numbers.withUnit(Numbers.decimal(dbfs, 1), "dBFS");
    }

    private static void fields(Markup out) {
        out.open("dl", "class", "fields").line();
        for (String field : FIELDS) {
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

    private static void wiring(Markup out) {
        open(out, "wiring", "3. Connect");
        for (List<String> way : SetUpWords.WIRING) {
            out.open("p", "class", "way")
                    .element("span", way.get(0))
                    .element("span", "\u2192", "class", "to")
                    .element("span", way.get(1))
                    .close("p")
                    .line();
        }
        out.element("p", SetUpWords.WIRING_NOTE).close("section").line();
    }

    private static void modes(Markup out) {
        open(out, "modes", "5. Record, by the kind of machine").open("dl").line();
        for (List<String> mode : SetUpWords.MODES) {
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
