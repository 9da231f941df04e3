package offtape.report.render;

import offtape.core.filter.EqualiserBand;
import offtape.core.filter.EqualiserBand.Kind;
import offtape.report.apply.correct.ChannelCorrection;
import offtape.report.apply.correct.Correction;
import offtape.report.apply.correct.EqualiserSettings;
import offtape.report.apply.correct.FilterFile;
import offtape.report.apply.correct.Headroom;
import offtape.report.apply.correct.NoiseChange;
import offtape.report.apply.level.OperatingLevels;
import offtape.report.apply.level.PairLevel;

/** What a person dials in, as plain text. */
final class SettingsText {

    private static final String INDENT = "  ";

    private final Wording words;
    private final Correction correction;
    private final StringBuilder out = new StringBuilder();

    private SettingsText(Wording words, Correction correction) {
        this.words = words;
        this.correction = correction;
    }

    static String of(Wording words, Correction correction) {
        return new SettingsText(words, correction).text();
    }

    private String text() {
        say("correction.settings-title", words.machine(correction.session()));
        text(words.description(correction.session()));
        text("");
        say("correction.settings-one-way");
        before();
        after();
        equaliser();
        levels();
        if (!correction.notes().isEmpty()) {
            heading("correction.settings-mind");
            correction.notes().forEach(n -> text(words.told(n)));
        }
        return out.toString();
    }

    private void before() {
        heading("correction.settings-before");
        for (FilterFile f : correction.filters()) {
            say(
                    "correction.settings-filter-before",
                    f.sampleRateHz(),
                    f.beforeTape(),
                    f.peakGainDb(),
                    f.boundDb());
        }
        for (Headroom h : correction.headroom()) {
            if (h.highsBelowDbfs().isKnown()) {
                say(
                        "correction.settings-highs",
                        name(h.channel()),
                        hertz(h.frequencyHz()),
                        h.highsBelowDbfs().value());
            } else {
                say(
                        "correction.settings-highs-unknown",
                        name(h.channel()),
                        words.told(h.highsBelowDbfs().reason()));
            }
        }
    }

    private void after() {
        heading("correction.settings-after");
        for (FilterFile f : correction.filters()) {
            say("correction.settings-filter-after", f.sampleRateHz(), f.afterTape());
        }
        for (NoiseChange n : correction.noise()) {
            if (n.aWeighted().isKnown()) {
                say("correction.settings-hiss", name(n.channel()), n.aWeighted().value());
            } else {
                say(
                        "correction.settings-hiss-unknown",
                        name(n.channel()),
                        words.told(n.aWeighted().reason()));
            }
        }
    }

    private void equaliser() {
        heading("correction.settings-equaliser");
        for (ChannelCorrection c : correction.channels()) {
            EqualiserSettings e = c.equaliser();
            text(name(c.channel()) + ":");
            if (e.bands().isEmpty()) {
                item("correction.settings-no-band");
            }
            for (EqualiserBand b : e.bands()) {
                item(
                        "correction.settings-band",
                        CorrectionFilterSection.kind(words, b),
                        hertz(b.frequencyHz()),
                        b.gainDb(),
                        b.kind() == Kind.PEAK ? words.significant(b.q(), 2) : words.number("0.71"));
            }
            item(
                    "correction.settings-trim",
                    words.say("correction.settings-level"),
                    "",
                    e.trimDb());
            item(
                    "correction.settings-off",
                    e.worstDb(),
                    e.rmsDb(),
                    hertz(e.fromHz()),
                    hertz(e.toHz()));
        }
        say("correction.settings-q");
    }

    private void levels() {
        heading("correction.settings-levels");
        CorrectionLevelSection levels = new CorrectionLevelSection(words);
        for (OperatingLevels o : correction.levels()) {
            text(levels.which(o) + ":");
            for (PairLevel p : o.pair()) {
                String what =
                        p.what().equals(PairLevel.K3)
                                ? words.say(
                                        "correction.settings-k3", words.significant(p.value(), 3))
                                : words.say("correction.settings-compression");
                item("correction.settings-reached", what, peaks(p));
            }
        }
    }

    private String peaks(PairLevel p) {
        return p.peaksDbfs().isKnown()
                ? words.say(
                        "correction.settings-peaks", p.peaksDbfs().value(), p.recordLevel().value())
                : words.say("page.unknown", words.told(p.peaksDbfs().reason()));
    }

    private String name(String channel) {
        return words.sentence(words.channel(channel));
    }

    private String hertz(double hz) {
        return words.frequency(hz).replace('\u00a0', ' ');
    }

    private void heading(String key) {
        String text = words.say(key);
        text("");
        text(text);
        text("-".repeat(text.length()));
    }

    private void say(String key, Object... arguments) {
        text(words.say(key, arguments));
    }

    private void item(String key, Object... arguments) {
        text(INDENT + words.say(key, arguments));
    }

    private void text(String text) {
        out.append(text).append('\n');
    }
}
