package offtape.report.render;

import java.util.List;
import java.util.Locale;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;

/**
 * When which part of a programme sounds, as a table to follow along.
 *
 * @param words the reader's language
 */
record CueTimes(Wording words) {

    private static final List<String> COLUMNS =
            List.of(
                    "setup.times-from",
                    "setup.times-length",
                    "setup.times-sound",
                    "setup.times-channel",
                    "setup.times-level");

    /** A section with a row a cue. */
    Markup table(CueSheet sheet) {
        Markup out =
                new Markup()
                        .open("section", "class", "times", "aria-labelledby", "times-heading")
                        .element("h2", words.say("setup.times"), "id", "times-heading")
                        .line()
                        .open("table")
                        .line()
                        .element("caption", words.say("setup.times-caption"))
                        .line()
                        .open("thead")
                        .open("tr");
        for (String column : COLUMNS) {
            out.element("th", words.say(column), "scope", "col");
        }
        out.close("tr").close("thead").line().open("tbody").line();
        for (Cue cue : sheet.cues()) {
            out.open("tr")
                    .element("th", clock(sheet.seconds(cue.startFrame())), "scope", "row")
                    .element("td", words.decimal(sheet.seconds(cue.frames()), 1) + " s")
                    .element("td", sound(cue))
                    .element("td", channel(cue))
                    .element("td", level(cue))
                    .close("tr")
                    .line();
        }
        return out.close("tbody").close("table").close("section").line();
    }

    private String clock(double seconds) {
        long tenths = Math.round(seconds * 10);
        return words.number(
                String.format(
                        Locale.ROOT, "%d:%02d.%d", tenths / 600, tenths / 10 % 60, tenths % 10));
    }

    private String channel(Cue cue) {
        return cue instanceof Cue.Silence ? "" : words.channel(cue.channels().key());
    }

    private String sound(Cue cue) {
        if (cue instanceof Cue.Tone t) {
            return words.say("setup.sound-tone", words.frequency(t.frequencyHz()));
        }
        if (cue instanceof Cue.Sweep s) {
            return words.say(
                    "setup.sound-sweep", words.frequency(s.startHz()), words.frequency(s.endHz()));
        }
        if (cue instanceof Cue.Ladder l) {
            return words.say(
                    "setup.sound-ladder", words.frequency(l.frequencyHz()), l.steps().size());
        }
        return cue instanceof Cue.Silence
                ? words.say("setup.sound-silence")
                : words.say("setup.sound-marker", cue.id());
    }

    private String level(Cue cue) {
        if (cue instanceof Cue.Tone t) {
            return words.signed(t.levelDb(), 0);
        }
        if (cue instanceof Cue.Sweep s) {
            return words.signed(s.levelDb(), 0);
        }
        if (cue instanceof Cue.Ladder l) {
            List<Cue.Step> steps = l.steps();
            return words.say(
                    "setup.level-range",
                    words.signed(steps.get(0).levelDb(), 0),
                    words.signed(steps.get(steps.size() - 1).levelDb(), 0));
        }
        return "";
    }
}
