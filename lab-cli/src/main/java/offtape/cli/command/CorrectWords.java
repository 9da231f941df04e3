package offtape.cli.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import offtape.cli.terminal.Terminal;
import offtape.core.filter.EqualiserBand;
import offtape.core.unit.Quantity;
import offtape.report.apply.correct.ChannelCorrection;
import offtape.report.apply.correct.Correction;
import offtape.report.apply.correct.EqualiserSettings;
import offtape.report.apply.correct.FilterFile;
import offtape.report.apply.correct.Headroom;
import offtape.report.apply.correct.MusicCheck;
import offtape.report.apply.correct.NoiseChange;
import offtape.report.apply.correct.Stretch;
import offtape.report.apply.correct.Verification;
import offtape.report.apply.level.OperatingLevels;
import offtape.report.apply.level.PairLevel;
import offtape.report.render.CorrectionFiles;

/** A correction as lines for the terminal. */
final class CorrectWords {

    /** Channels that differ by less need no filter each, dB. */
    private static final double ALIKE_DB = 0.5;

    private final Speech speech;

    /** The words spoken on a terminal. */
    CorrectWords(Terminal terminal) {
        this.speech = Speech.of(terminal);
    }

    /** What was found, a line a figure. */
    List<String> lines(Correction c) {
        List<String> lines = new ArrayList<>();
        c.channels().forEach(x -> lines.add(met(x)));
        c.channels().stream()
                .filter(x -> !x.limited().isEmpty())
                .forEach(x -> lines.add(limited(x)));
        lines.add(channels(c));
        c.filters().forEach(f -> lines.addAll(filter(f)));
        c.channels().forEach(x -> lines.add(equaliser(x)));
        c.noise().forEach(n -> lines.add(noise(n)));
        c.headroom().forEach(h -> lines.add(headroom(h)));
        c.levels().forEach(o -> lines.addAll(levels(o)));
        if (c.music() != null) {
            lines.addAll(music(c.music()));
        }
        if (c.verification() != null) {
            c.verification().channels().forEach(v -> lines.add(tried(v)));
        }
        c.notes().forEach(n -> lines.add(speech.say("correct.mind", speech.told(n))));
        return lines;
    }

    private String met(ChannelCorrection x) {
        return speech.say(
                "correct.response",
                speech.told(x.channel()),
                speech.hertz(x.metFromHz()),
                speech.hertz(x.metToHz()),
                level(x.mostGainDb()),
                speech.hertz(x.mostGainHz()));
    }

    private String limited(ChannelCorrection x) {
        return speech.say(
                "correct.held-back",
                speech.told(x.channel()),
                x.limited().stream().map(this::stretch).collect(Collectors.joining(", ")));
    }

    private String stretch(Stretch s) {
        return speech.say("correct.stretch", speech.hertz(s.fromHz()), speech.hertz(s.toHz()));
    }

    private String channels(Correction c) {
        Quantity differ = c.channelsDiffer();
        if (!differ.isKnown()) {
            return speech.say("correct.channels", speech.told(differ.reason()));
        }
        String key =
                c.sameFilter()
                        ? "correct.channels-same"
                        : differ.value() < ALIKE_DB
                                ? "correct.channels-alike"
                                : "correct.channels-own";
        return speech.say(key, speech.fixed("%.1f", differ.value()));
    }

    private List<String> filter(FilterFile f) {
        List<String> lines = new ArrayList<>();
        for (FilterFile.Channel x : f.channels()) {
            lines.add(
                    speech.say(
                            "correct.filter",
                            speech.told(x.channel()),
                            f.sampleRateHz(),
                            f.taps(),
                            speech.fixed("%.0f", f.milliseconds()),
                            speech.fixed("%.3f", x.error().worstDb())));
        }
        lines.add(
                speech.say(
                        "correct.turn-down",
                        speech.fixed("%.1f", f.peakGainDb()),
                        f.sampleRateHz(),
                        speech.fixed("%.1f", f.boundDb())));
        return lines;
    }

    private String equaliser(ChannelCorrection x) {
        EqualiserSettings e = x.equaliser();
        String bands =
                e.bands().isEmpty()
                        ? speech.say("correct.nothing-to-set")
                        : e.bands().stream().map(this::band).collect(Collectors.joining("; "));
        return speech.say(
                "correct.equaliser",
                speech.told(x.channel()),
                bands,
                level(e.trimDb()),
                speech.fixed("%.1f", e.worstDb()),
                speech.fixed("%.1f", e.rmsDb()));
    }

    private String band(EqualiserBand b) {
        String kind =
                switch (b.kind()) {
                    case PEAK -> "correct.peak";
                    case LOW_SHELF -> "correct.low-shelf";
                    case HIGH_SHELF -> "correct.high-shelf";
                };
        String band = speech.say(kind, speech.hertz(b.frequencyHz()), level(b.gainDb()));
        return b.kind() == EqualiserBand.Kind.PEAK
                ? speech.say("correct.quality", band, speech.significant(b.q(), 2))
                : band;
    }

    private String noise(NoiseChange n) {
        String channel = speech.told(n.channel());
        return n.aWeighted().isKnown()
                ? speech.say(
                        "correct.hiss",
                        channel,
                        level(n.aWeighted().value()),
                        level(n.unweighted().value()))
                : speech.say("correct.hiss-unknown", channel, speech.told(n.aWeighted().reason()));
    }

    private String headroom(Headroom h) {
        String channel = speech.told(h.channel());
        if (!h.highsBelow().isKnown()) {
            return speech.say(
                    "correct.highs-unknown", channel, speech.told(h.highsBelow().reason()));
        }
        String highs =
                speech.say(
                        "correct.highs",
                        channel,
                        level(h.boostDb()),
                        speech.fixed("%.0f", h.frequencyHz() / 1000),
                        level(h.highsBelow().value()));
        return h.highsBelowDbfs().isKnown()
                ? speech.say("correct.highs-peaks", highs, level(h.highsBelowDbfs().value()))
                : highs;
    }

    private List<String> levels(OperatingLevels o) {
        String speed =
                o.tapeSpeedMmPerS() == null
                        ? speech.say("correct.speed-not-stated")
                        : speech.significant(o.tapeSpeedMmPerS() / 10, 4) + " cm/s";
        List<String> lines = new ArrayList<>();
        for (PairLevel p : o.pair()) {
            String what =
                    p.what().equals(PairLevel.K3)
                            ? "K3 " + speech.significant(p.value(), 2) + " %"
                            : speech.say("correct.compression");
            lines.add(
                    p.peaksDbfs().isKnown()
                            ? speech.say(
                                    "correct.level",
                                    speed,
                                    what,
                                    level(p.peaksDbfs().value()),
                                    level(p.recordLevel().value()),
                                    speech.told(p.channel()))
                            : speech.say(
                                    "correct.level-unknown",
                                    speed,
                                    what,
                                    speech.told(p.peaksDbfs().reason())));
        }
        return lines;
    }

    private List<String> music(MusicCheck m) {
        List<String> lines = new ArrayList<>();
        lines.add(speech.say("correct.music", level(m.peakDbfs()), level(m.filteredPeakDbfs())));
        lines.add(
                m.lowerForTape().isKnown()
                        ? speech.say(
                                "correct.music-lower",
                                speech.fixed("%.1f", m.lowerForTape().value()))
                        : speech.say(
                                "correct.music-unknown", speech.told(m.lowerForTape().reason())));
        m.channels().stream().filter(x -> x.overDb() != null).forEach(x -> lines.add(over(x)));
        return lines;
    }

    private String over(MusicCheck.Channel x) {
        String bands =
                IntStream.range(0, x.overDb().length)
                        .filter(i -> x.overDb()[i] >= 0.05)
                        .mapToObj(
                                i ->
                                        speech.say(
                                                "correct.over-by",
                                                speech.hertz(x.frequencyHz()[i]),
                                                speech.fixed("%.1f", x.overDb()[i])))
                        .collect(Collectors.joining(", "));
        return speech.say(
                "correct.too-loud",
                speech.told(x.channel()),
                bands.isEmpty() ? speech.say("correct.no-band") : bands);
    }

    private String tried(Verification.Channel v) {
        String tried =
                speech.say(
                        "correct.tried",
                        speech.told(v.channel()),
                        speech.fixed("%.2f", v.worstDb()),
                        speech.fixed("%.2f", v.rmsDb()),
                        speech.hertz(v.fromHz()),
                        speech.hertz(v.toHz()));
        return v.noiseMeasured().isKnown() && v.noisePredicted().isKnown()
                ? speech.say(
                        "correct.tried-hiss",
                        tried,
                        speech.fixed("%+.2f", v.noiseMeasured().value()),
                        speech.fixed("%+.2f", v.noisePredicted().value()))
                : tried;
    }

    /** What to do with the files. */
    List<String> next(Correction c, Path out) {
        FilterFile f = c.usualFilter();
        return List.of(
                speech.say(
                        "correct.next",
                        speech.fixed("%.1f", f.peakGainDb()),
                        out.resolve(f.beforeTape())),
                speech.say("correct.or", out.resolve(f.afterTape())),
                speech.say("correct.settings", out.resolve(CorrectionFiles.SETTINGS)),
                speech.say("correct.page", out.resolve(CorrectionFiles.PAGE)));
    }

    private String level(double db) {
        return speech.fixed("%+.1f", db);
    }
}
