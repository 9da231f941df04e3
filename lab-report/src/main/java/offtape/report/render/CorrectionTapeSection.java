package offtape.report.render;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import offtape.core.unit.Quantity;
import offtape.report.apply.correct.Correction;
import offtape.report.apply.correct.Headroom;
import offtape.report.apply.correct.MusicCheck;
import offtape.report.apply.correct.NoiseChange;

/** What either way costs: hiss after the tape, headroom before it. */
final class CorrectionTapeSection {

    private static final double LOWEST_DB = -20;
    private static final double HIGHEST_DB = 6;

    private CorrectionTapeSection() {}

    /** Hiss either way. */
    static Section noise(Correction c) {
        Markup body =
                Section.paragraph(
                        "For the same response at the end, highs lifted before the tape leave less"
                                + " hiss than highs lifted after it (common practice, no source)."
                                + " Before the tape the hiss stays as it is; after it the filter"
                                + " lifts the hiss as well.");
        List<NoiseChange> drawn =
                c.noise().stream().filter(n -> n.frequencyHz().length > 0).toList();
        if (!drawn.isEmpty()) {
            String caption =
                    "Heavier lines: the hiss as it is, which the way before the tape leaves. Finer ones: behind"
                            + " the filter after the tape.";
            Chart chart = CorrectionCharts.noise(drawn, caption);
            body.add(Section.figure(caption, List.of(chart)));
            body.add(ChartTable.of(chart).folded());
        }
        body.add(
                new DataTable(
                                "Change of the hiss by the filter after the tape",
                                List.of(
                                        "Channel",
                                        "Unweighted",
                                        "A-weighted",
                                        "Curve of BS.468, rms",
                                        "A-weighted, before and after"),
                                c.noise().stream().map(CorrectionTapeSection::row).toList())
                        .open());
        body.add(
                Section.paragraph(
                        "If the boosted highs force the whole programme down before the tape, that"
                                + " many decibels of the advantage are gone."));
        return new Section("noise", "Before or after the tape: hiss", body);
    }

    private static List<String> row(NoiseChange n) {
        boolean known = n.aWeighted().isKnown() && n.aWeightedAfter().isKnown();
        return List.of(
                Words.sentence(n.channel()),
                Numbers.full(n.unweighted(), true),
                Numbers.full(n.aWeighted(), true),
                Numbers.full(n.itu468(), true),
                known
                        ? Numbers.level(n.aWeightedAfter().value() - n.aWeighted().value())
                                + " to "
                                + Numbers.level(n.aWeightedAfter().value())
                        : DataTable.NOTHING);
    }

    /** Headroom of the highs. */
    static Section headroom(Correction c) {
        Markup body =
                Section.paragraph(
                        "A boost before the tape drives the highs harder into it, and tape takes"
                                + " less of highs than of the middle.");
        for (Headroom h : c.headroom()) {
            if (!h.rows().isEmpty()) {
                String caption = caption(h);
                body.add(Section.figure(caption, List.of(chart(h, caption))));
                body.add(table(h).folded());
            }
        }
        body.add(limits(c).open());
        if (c.music() != null) {
            body.add(music(c.music()));
        }
        return new Section("headroom", "Headroom of the highs", body);
    }

    private static String caption(Headroom h) {
        String start = Words.sentence(h.channel()) + ": with " + Numbers.level(h.boostDb());
        return h.highsBelow().isKnown()
                ? start
                        + " at "
                        + Numbers.frequency(h.frequencyHz())
                        + ", the highs of the programme lose less than 1 dB as long as they stay"
                        + " below "
                        + Numbers.level(h.highsBelow().value())
                        + " re reference."
                : start + ": " + h.highsBelow().reason();
    }

    private static Chart chart(Headroom h, String caption) {
        List<Series> series = new ArrayList<>();
        for (double boost : List.of(0.0, 6.0, 12.0)) {
            if (Math.abs(boost - h.boostDb()) > 1) {
                series.add(series(h, boost, Look.of(h.channel(), true)));
            }
        }
        series.add(series(h, h.boostDb(), Look.of(h.channel(), false)));
        return Chart.of(
                        "correction-headroom-" + h.channel(),
                        "Compression of "
                                + Numbers.frequency(h.frequencyHz())
                                + " over level and boost, "
                                + h.channel(),
                        caption,
                        Axis.linear(
                                "Level in the programme, dB re reference", LOWEST_DB, HIGHEST_DB),
                        Axis.linear("Compression, dB", 0, 12),
                        series)
                .withRules(List.of(new Chart.Rule(1, "1 dB")));
    }

    private static Series series(Headroom h, double boost, Look look) {
        List<Headroom.Row> rows =
                h.rows().stream()
                        .filter(r -> r.boostDb() == boost && r.compressionDb() != null)
                        .toList();
        return Series.of(
                boost == 0 ? "no boost" : Numbers.level(boost),
                look,
                rows.stream().mapToDouble(Headroom.Row::programmeLevelDb).toArray(),
                rows.stream().mapToDouble(Headroom.Row::compressionDb).toArray(),
                1);
    }

    private static DataTable table(Headroom h) {
        List<Double> boosts = h.rows().stream().map(Headroom.Row::boostDb).distinct().toList();
        List<String> heads = new ArrayList<>(List.of("Level, dB re reference"));
        boosts.forEach(b -> heads.add("boost " + Numbers.signed(b, 1) + " dB"));
        List<List<String>> rows =
                h.rows().stream()
                        .map(Headroom.Row::programmeLevelDb)
                        .distinct()
                        .map(
                                level -> {
                                    List<String> row = new ArrayList<>();
                                    row.add(Numbers.signed(level, 0));
                                    h.rows().stream()
                                            .filter(r -> r.programmeLevelDb() == level)
                                            .forEach(r -> row.add(cell(r.compressionDb())));
                                    return row;
                                })
                        .toList();
        return new DataTable(
                "Compression in dB of "
                        + Numbers.frequency(h.frequencyHz())
                        + " over level and boost, "
                        + h.channel()
                        + "; nothing where the ladder ends",
                heads,
                rows);
    }

    private static String cell(Double db) {
        return db == null ? DataTable.NOTHING : Numbers.decimal(db, 1);
    }

    private static DataTable limits(Correction c) {
        List<List<String>> rows = new ArrayList<>();
        for (Headroom h : c.headroom()) {
            String name = Words.sentence(h.channel()) + ", ";
            String at = Numbers.frequency(h.frequencyHz());
            add(rows, name + at + " compressed by 1 dB at", h.oneDbLevel());
            add(rows, name + "so with the boost the highs stay below", h.highsBelow());
            add(rows, name + "as a sine's peak, dBFS", h.highsBelowDbfs());
            add(rows, name + "saturation output level", h.saturationOutputLevel());
            add(rows, name + "the middle compressed by 1 dB at", h.middleOneDbLevel());
            if (h.loudSweepLevelDb() != null) {
                String level = Numbers.level(h.loudSweepLevelDb());
                add(rows, name + "loss at 10 kHz of a sweep at " + level, h.lossAt10kHz());
                add(rows, name + "that loss reaches 1 dB from", h.oneDbLossFrom());
            }
        }
        return new DataTable(
                "What the tape takes, dB re reference", List.of("Figure", "Value"), rows);
    }

    private static void add(List<List<String>> rows, String what, Quantity figure) {
        rows.add(List.of(what, Numbers.full(figure, false)));
    }

    private static Markup music(MusicCheck m) {
        Markup out =
                Section.paragraph(
                        m.file()
                                + " peaks at "
                                + Numbers.signed(m.peakDbfs(), 1)
                                + " dBFS, behind the filter at "
                                + Numbers.signed(m.filteredPeakDbfs(), 1)
                                + " dBFS. So that no band is compressed by more than 1 dB it has to"
                                + " be lower by: "
                                + Numbers.full(m.lowerForTape(), false)
                                + ".");
        m.channels().forEach(x -> out.add(music(x).folded()));
        return out;
    }

    private static DataTable music(MusicCheck.Channel x) {
        return new DataTable(
                "Loudest tenth of a second in each band, " + x.channel(),
                List.of("Band, Hz", "Level, dB", "Boosted, dB", "Limit, dB", "Over by, dB"),
                IntStream.range(0, x.frequencyHz().length)
                        .mapToObj(
                                i ->
                                        List.of(
                                                Numbers.significant(x.frequencyHz()[i], 3),
                                                Numbers.signed(x.levelDb()[i], 1),
                                                Numbers.signed(x.boostedDb()[i], 1),
                                                x.limitDb() == null
                                                        ? DataTable.NOTHING
                                                        : Numbers.signed(x.limitDb()[i], 1),
                                                x.overDb() == null || x.overDb()[i] == 0
                                                        ? DataTable.NOTHING
                                                        : Numbers.decimal(x.overDb()[i], 1)))
                        .toList());
    }
}
