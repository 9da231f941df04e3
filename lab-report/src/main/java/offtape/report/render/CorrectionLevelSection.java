package offtape.report.render;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import offtape.report.apply.correct.Correction;
import offtape.report.apply.level.ChannelLevels;
import offtape.report.apply.level.LevelAtK3;
import offtape.report.apply.level.OperatingLevels;
import offtape.report.apply.level.PairLevel;

/** How hot to record: distortion against noise. */
final class CorrectionLevelSection {

    private static final double LEAST_PERCENT = 0.03;
    private static final double MOST_PERCENT = 30;

    private CorrectionLevelSection() {}

    /** The section. */
    static Section of(Correction c) {
        Markup body =
                Section.paragraph(
                        "Hotter leaves the hiss further below and bends the sound more. Between a"
                                + " third harmonic of 1 % and 1 dB of compression tape is heard to"
                                + " do its work without breaking up (common practice, no source).");
        for (int i = 0; i < c.levels().size(); i++) {
            body.add(session(c.levels().get(i), i));
        }
        return new Section("level", "How hot to record", body);
    }

    private static Markup session(OperatingLevels o, int number) {
        Markup out = new Markup();
        List<ChannelLevels> drawn =
                o.channels().stream().filter(x -> x.dynamicRangeDb().length > 1).toList();
        String which = which(o);
        if (!drawn.isEmpty()) {
            String caption = which + ": " + sweetSpot(o);
            Chart chart = chart(o, drawn, number, caption);
            out.add(Section.figure(caption, List.of(chart)));
            out.add(ChartTable.of(chart).folded());
        }
        out.add(pair(o, which).open());
        out.add(channels(o, which).folded());
        return out;
    }

    private static String which(OperatingLevels o) {
        return (o.tapeSpeedMmPerS() == null
                        ? "Tape speed not stated"
                        : "At " + Numbers.significant(o.tapeSpeedMmPerS() / 10, 4) + " cm/s")
                + (Words.isGiven(o.tape()) ? ", " + o.tape() : "");
    }

    static String sweetSpot(OperatingLevels o) {
        Optional<PairLevel> one = o.atK3(1);
        Optional<PairLevel> oneDb = o.atOneDb();
        if (one.isEmpty()
                || oneDb.isEmpty()
                || !one.get().peaksDbfs().isKnown()
                || !oneDb.get().peaksDbfs().isKnown()) {
            return "the stretch from K3 1 % to 1 dB of compression is not known.";
        }
        return "peaks from "
                + Numbers.signed(one.get().peaksDbfs().value(), 1)
                + " dBFS (K3 1 %) to "
                + Numbers.signed(oneDb.get().peaksDbfs().value(), 1)
                + " dBFS (1 dB of compression).";
    }

    private static Chart chart(
            OperatingLevels o, List<ChannelLevels> drawn, int number, String caption) {
        double low = 200;
        double high = -200;
        List<Series> series = new ArrayList<>();
        List<Chart.Mark> marks = new ArrayList<>();
        for (ChannelLevels c : drawn) {
            low = Math.min(low, Arrays.stream(c.dynamicRangeDb()).min().orElse(low));
            high = Math.max(high, Arrays.stream(c.dynamicRangeDb()).max().orElse(high));
            series.add(
                    Series.of(
                            Words.sentence(c.channel()),
                            Look.of(c.channel(), false),
                            c.k3Percent(),
                            c.dynamicRangeDb(),
                            1));
            for (LevelAtK3 l : c.atK3()) {
                if (l.dynamicRange().isKnown() && l.peaksDbfs().isKnown()) {
                    marks.add(mark(c, l));
                }
            }
        }
        Chart chart =
                Chart.of(
                                "correction-range-" + (number + 1),
                                "Dynamic range against distortion",
                                caption,
                                Axis.oneThree("Third harmonic, %", LEAST_PERCENT, MOST_PERCENT),
                                Axis.linear(
                                        "Level over A-weighted noise, dB",
                                        5 * Math.floor((low - 1) / 5),
                                        5 * Math.ceil((high + 3) / 5)),
                                series)
                        .withMarks(marks);
        return sweetBand(o, drawn).map(b -> chart.withBands(List.of(b))).orElse(chart);
    }

    private static Chart.Mark mark(ChannelLevels c, LevelAtK3 l) {
        return new Chart.Mark(
                l.k3Percent(),
                l.dynamicRange().value(),
                Math.min(
                        ResponseSection.MOST_DECIMALS,
                        Numbers.decimals(l.dynamicRange().uncertainty())),
                Words.sentence(c.channel()).substring(0, 1)
                        + " "
                        + Numbers.signed(l.peaksDbfs().value(), 1)
                        + " dBFS",
                Look.of(c.channel(), false),
                false);
    }

    private static Optional<Chart.Band> sweetBand(OperatingLevels o, List<ChannelLevels> drawn) {
        PairLevel oneDb = o.atOneDb().orElse(null);
        if (oneDb == null || !oneDb.recordLevel().isKnown()) {
            return Optional.empty();
        }
        return drawn.stream()
                .filter(c -> c.channel().equals(oneDb.channel()))
                .map(c -> c.k3At(oneDb.recordLevel().value()))
                .filter(k3 -> k3 != null && k3 > 1 && k3 < MOST_PERCENT)
                .findFirst()
                .map(k3 -> new Chart.Band(1, k3, "sweet spot"));
    }

    private static DataTable pair(OperatingLevels o, String which) {
        return new DataTable(
                which + ": peaks of a steady tone, the channel that gets there first",
                List.of("What is reached", "Peaks, dBFS", "dB re reference", "Channel"),
                o.pair().stream()
                        .map(
                                p ->
                                        List.of(
                                                what(p),
                                                dbfs(p.peaksDbfs()),
                                                Numbers.full(p.recordLevel(), true),
                                                p.channel() == null
                                                        ? DataTable.NOTHING
                                                        : p.channel()))
                        .toList());
    }

    private static String dbfs(offtape.core.unit.Quantity q) {
        return Numbers.full(q, true);
    }

    private static String what(PairLevel p) {
        return p.what().equals(PairLevel.K3)
                ? "K3 " + Numbers.significant(p.value(), 3) + " %"
                : "Compression 1 dB";
    }

    private static DataTable channels(OperatingLevels o, String which) {
        List<List<String>> rows = new ArrayList<>();
        for (ChannelLevels c : o.channels()) {
            String name = Words.sentence(c.channel()) + ", ";
            for (LevelAtK3 l : c.atK3()) {
                rows.add(
                        List.of(
                                name + "K3 " + Numbers.significant(l.k3Percent(), 3) + " %",
                                Numbers.full(l.recordLevel(), true),
                                Numbers.full(l.peaksDbfs(), true),
                                Numbers.full(l.replayLevel(), true),
                                Numbers.full(l.dynamicRange(), false)));
            }
            rows.add(
                    List.of(
                            name + "compression 1 dB",
                            Numbers.full(c.oneDbLevel(), true),
                            Numbers.full(c.oneDbDbfs(), true),
                            DataTable.NOTHING,
                            DataTable.NOTHING));
        }
        return new DataTable(
                which + ": levels of each channel",
                List.of(
                        "Channel, what is reached",
                        "Recorded, re reference",
                        "Peaks, dBFS",
                        "Replayed, re reference",
                        "Over A-weighted noise"),
                rows);
    }
}
