package offtape.report.render;

import java.util.List;
import java.util.Locale;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;

/** When which part of a programme sounds, as a table to follow along. */
final class CueTimes {

    private CueTimes() {}

    /** A section with a row a cue. */
    static Markup table(CueSheet sheet) {
        Markup out =
                new Markup()
                        .open("section", "class", "times", "aria-labelledby", "times-heading")
                        .element("h2", "What sounds when", "id", "times-heading")
                        .line()
                        .open("table")
                        .line()
                        .element(
                                "caption",
                                "Minutes and seconds from the start of the programme; level in dB"
                                        + " above the reference tone.")
                        .line()
                        .open("thead")
                        .open("tr");
        for (String column : List.of("From", "Length", "Sound", "Channel", "Level")) {
            out.element("th", column, "scope", "col");
        }
        out.close("tr").close("thead").line().open("tbody").line();
        for (Cue cue : sheet.cues()) {
            out.open("tr")
                    .element("th", clock(sheet.seconds(cue.startFrame())), "scope", "row")
                    .element("td", Numbers.decimal(sheet.seconds(cue.frames()), 1) + " s")
                    .element("td", sound(cue))
                    .element("td", cue instanceof Cue.Silence ? "" : cue.channels().key())
                    .element("td", level(cue))
                    .close("tr")
                    .line();
        }
        return out.close("tbody").close("table").close("section").line();
    }

    private static String clock(double seconds) {
        long tenths = Math.round(seconds * 10);
        return String.format(
                Locale.ROOT, "%d:%02d.%d", tenths / 600, tenths / 10 % 60, tenths % 10);
    }

    private static String sound(Cue cue) {
        if (cue instanceof Cue.Tone t) {
            return "tone " + Numbers.frequency(t.frequencyHz());
        }
        if (cue instanceof Cue.Sweep s) {
            return "sweep "
                    + Numbers.frequency(s.startHz())
                    + " to "
                    + Numbers.frequency(s.endHz());
        }
        if (cue instanceof Cue.Ladder l) {
            return "ladder "
                    + Numbers.frequency(l.frequencyHz())
                    + ", "
                    + l.steps().size()
                    + " steps";
        }
        return cue instanceof Cue.Silence
                ? "silence, recorded"
                : "marker \u201c" + cue.id() + "\u201d";
    }

    private static String level(Cue cue) {
        if (cue instanceof Cue.Tone t) {
            return Numbers.signed(t.levelDb(), 0);
        }
        if (cue instanceof Cue.Sweep s) {
            return Numbers.signed(s.levelDb(), 0);
        }
        if (cue instanceof Cue.Ladder l) {
            List<Cue.Step> steps = l.steps();
            return Numbers.signed(steps.get(0).levelDb(), 0)
                    + " to "
                    + Numbers.signed(steps.get(steps.size() - 1).levelDb(), 0);
        }
        return "";
    }
}
