package offtape.cli.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
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

    private CorrectWords() {}

    /** What was found, a line a figure. */
    static List<String> lines(Correction c) {
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
        c.notes().forEach(n -> lines.add("Mind: " + n));
        return lines;
    }

    private static String met(ChannelCorrection x) {
        return Figures.text(
                        String.format(
                                Locale.ROOT,
                                "Response         %-5s within 0.5 dB of the target from ",
                                x.channel()))
                + hertz(x.metFromHz())
                + " to "
                + hertz(x.metToHz())
                + Figures.text("; boost %+.1f dB at most, at ", x.mostGainDb())
                + hertz(x.mostGainHz());
    }

    private static String limited(ChannelCorrection x) {
        return String.format(
                Locale.ROOT,
                "Held back        %-5s the limits hold more than 0.5 dB back: %s",
                x.channel(),
                x.limited().stream().map(CorrectWords::stretch).collect(Collectors.joining(", ")));
    }

    private static String stretch(Stretch s) {
        return hertz(s.fromHz()) + " to " + hertz(s.toHz());
    }

    private static String channels(Correction c) {
        Quantity differ = c.channelsDiffer();
        if (!differ.isKnown()) {
            return "Channels         " + differ.reason();
        }
        String by = Figures.text("Channels         differ by up to %.1f dB: ", differ.value());
        if (c.sameFilter()) {
            return by + "one filter for their mean leaves half of that on each";
        }
        return by
                + (differ.value() < ALIKE_DB
                        ? "one filter for both (--same-filter) would do"
                        : "each has its own filter, which is better");
    }

    private static List<String> filter(FilterFile f) {
        List<String> lines = new ArrayList<>();
        for (FilterFile.Channel x : f.channels()) {
            lines.add(
                    Figures.text(
                                    String.format(
                                            Locale.ROOT,
                                            "Filter           %-5s %d Hz, %d samples (%.0f ms)",
                                            x.channel(),
                                            f.sampleRateHz(),
                                            f.taps(),
                                            f.milliseconds()))
                            + Figures.text(
                                    ": off the wanted gain by %.3f dB at most",
                                    x.error().worstDb()));
        }
        lines.add(
                Figures.text(
                        "Turn down        %.1f dB ahead of the filter at %.0f Hz (%.1f dB is enough for"
                                + " any sound)",
                        f.peakGainDb(), (double) f.sampleRateHz(), f.boundDb()));
        return lines;
    }

    private static String equaliser(ChannelCorrection x) {
        EqualiserSettings e = x.equaliser();
        String bands =
                e.bands().isEmpty()
                        ? "nothing to set"
                        : e.bands().stream()
                                .map(CorrectWords::band)
                                .collect(Collectors.joining("; "));
        return String.format(Locale.ROOT, "Equaliser        %-5s ", x.channel())
                + bands
                + Figures.text(
                        "; level %+.1f dB; off by %.1f dB at most, %.1f dB rms",
                        e.trimDb(), e.worstDb(), e.rmsDb());
    }

    private static String band(EqualiserBand b) {
        String q = b.kind() == EqualiserBand.Kind.PEAK ? " Q " + PlainNumber.of(b.q(), 2) : "";
        return b.kind().words()
                + " "
                + hertz(b.frequencyHz())
                + Figures.text(" %+.1f dB", b.gainDb())
                + q;
    }

    private static String noise(NoiseChange n) {
        String who = String.format(Locale.ROOT, "Hiss             %-5s ", n.channel());
        return n.aWeighted().isKnown()
                ? who
                        + Figures.text(
                                "after the tape the same filter changes it by %+.1f dB A-weighted,"
                                        + " %+.1f dB unweighted; before it by nothing",
                                n.aWeighted().value(), n.unweighted().value())
                : who + "unknown. " + n.aWeighted().reason();
    }

    private static String headroom(Headroom h) {
        String who = String.format(Locale.ROOT, "Highs            %-5s ", h.channel());
        if (!h.highsBelow().isKnown()) {
            return who + "headroom unknown. " + h.highsBelow().reason();
        }
        String start =
                Figures.text(
                        "with %+.1f dB at %.0f kHz, keep them under %+.1f dB re reference",
                        h.boostDb(), h.frequencyHz() / 1000, h.highsBelow().value());
        return who
                + start
                + (h.highsBelowDbfs().isKnown()
                        ? Figures.text(" (peaks at %+.1f dBFS)", h.highsBelowDbfs().value())
                        : "");
    }

    private static List<String> levels(OperatingLevels o) {
        String speed =
                o.tapeSpeedMmPerS() == null
                        ? "speed not stated"
                        : PlainNumber.of(o.tapeSpeedMmPerS() / 10, 4) + " cm/s";
        List<String> lines = new ArrayList<>();
        for (PairLevel p : o.pair()) {
            String what =
                    p.what().equals(PairLevel.K3)
                            ? "K3 " + PlainNumber.of(p.value(), 2) + " %"
                            : "compression 1 dB";
            lines.add(
                    "Record level     "
                            + speed
                            + ", "
                            + what
                            + ": "
                            + (p.peaksDbfs().isKnown()
                                    ? Figures.text(
                                                    "peaks at %+.1f dBFS (%+.1f dB re reference)",
                                                    p.peaksDbfs().value(), p.recordLevel().value())
                                            + ", first on the "
                                            + p.channel()
                                            + " channel"
                                    : "unknown. " + p.peaksDbfs().reason()));
        }
        return lines;
    }

    private static List<String> music(MusicCheck m) {
        List<String> lines = new ArrayList<>();
        lines.add(
                Figures.text(
                        "Music            peaks at %+.1f dBFS, behind the filter at %+.1f dBFS",
                        m.peakDbfs(), m.filteredPeakDbfs()));
        lines.add(
                m.lowerForTape().isKnown()
                        ? Figures.text(
                                "Music            has to be %.1f dB lower so that no band is compressed"
                                        + " by 1 dB",
                                m.lowerForTape().value())
                        : "Music            headroom unknown. " + m.lowerForTape().reason());
        m.channels().stream().filter(x -> x.overDb() != null).forEach(x -> lines.add(over(x)));
        return lines;
    }

    private static String over(MusicCheck.Channel x) {
        String bands =
                IntStream.range(0, x.overDb().length)
                        .filter(i -> x.overDb()[i] >= 0.05)
                        .mapToObj(
                                i ->
                                        hertz(x.frequencyHz()[i])
                                                + Figures.text(" by %.1f dB", x.overDb()[i]))
                        .collect(Collectors.joining(", "));
        return String.format(
                Locale.ROOT,
                "Music            %-5s too loud in: %s",
                x.channel(),
                bands.isEmpty() ? "no band" : bands);
    }

    private static String tried(Verification.Channel v) {
        String noise =
                v.noiseMeasured().isKnown() && v.noisePredicted().isKnown()
                        ? Figures.text(
                                "; hiss after the tape %+.2f dB, said %+.2f dB",
                                v.noiseMeasured().value(), v.noisePredicted().value())
                        : "";
        return Figures.text(
                        String.format(
                                Locale.ROOT,
                                "Tried            %-5s off target by %%.2f dB at most, %%.2f dB rms, from ",
                                v.channel()),
                        v.worstDb(),
                        v.rmsDb())
                + hertz(v.fromHz())
                + " to "
                + hertz(v.toHz())
                + noise;
    }

    /** What to do with the files. */
    static List<String> next(Correction c, Path out) {
        FilterFile f = c.usualFilter();
        return List.of(
                Figures.text(
                                "Next: before the tape, turn the programme down by %.1f dB and pass it"
                                        + " through ",
                                f.peakGainDb())
                        + out.resolve(f.beforeTape())
                        + ": in the workstation as an impulse response (fully wet, no normalising;"
                        + " it delays by 0 samples, 0 ms), or with offtape transfer --pre-emphasis.",
                "Or: leave the programme as it is and put "
                        + out.resolve(f.afterTape())
                        + " on what returns. Not both.",
                "Settings: " + out.resolve(CorrectionFiles.SETTINGS),
                "Page: " + out.resolve(CorrectionFiles.PAGE));
    }

    private static String hertz(double hz) {
        return hz < 1000 ? PlainNumber.of(hz, 3) + " Hz" : PlainNumber.of(hz / 1000, 3) + " kHz";
    }
}
