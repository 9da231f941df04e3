package offtape.report.render;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import offtape.core.unit.Quantity;
import offtape.report.apply.correct.Correction;
import offtape.report.apply.correct.Headroom;
import offtape.report.apply.correct.MusicCheck;
import offtape.report.apply.correct.NoiseChange;

/**
 * What either way costs: hiss after the tape, headroom before it.
 *
 * @param words of the reader
 */
record CorrectionTapeSection(Wording words) {

    private static final double LOWEST_DB = -20;
    private static final double HIGHEST_DB = 6;

    /** Hiss either way. */
    Section noise(Correction c) {
        Markup body = Section.paragraph(words, words.say("correction.noise"));
        List<NoiseChange> drawn =
                c.noise().stream().filter(n -> n.frequencyHz().length > 0).toList();
        if (!drawn.isEmpty()) {
            String caption = words.say("correction.noise-caption");
            Chart chart = new CorrectionCharts(words).noise(drawn, caption);
            body.add(Section.figure(words, caption, List.of(chart)));
            body.add(ChartTable.of(words, chart).folded(words));
        }
        body.add(
                new DataTable(
                                words.say("correction.noise-table"),
                                List.of(
                                        words.say("correction.channel"),
                                        words.say("correction.noise-unweighted"),
                                        words.say("correction.noise-a"),
                                        words.say("correction.noise-468"),
                                        words.say("correction.noise-a-both")),
                                c.noise().stream().map(this::row).toList())
                        .open());
        body.add(Section.paragraph(words, words.say("correction.noise-mind")));
        return new Section("noise", words.say("correction.noise-heading"), body);
    }

    private List<String> row(NoiseChange n) {
        boolean known = n.aWeighted().isKnown() && n.aWeightedAfter().isKnown();
        return List.of(
                channel(n.channel()),
                words.full(n.unweighted(), true),
                words.full(n.aWeighted(), true),
                words.full(n.itu468(), true),
                known
                        ? words.say(
                                "correction.from-to",
                                words.level(n.aWeightedAfter().value() - n.aWeighted().value()),
                                words.level(n.aWeightedAfter().value()))
                        : DataTable.NOTHING);
    }

    /** Headroom of the highs. */
    Section headroom(Correction c) {
        Markup body = Section.paragraph(words, words.say("correction.headroom"));
        for (Headroom h : c.headroom()) {
            if (!h.rows().isEmpty()) {
                String caption = caption(h);
                body.add(Section.figure(words, caption, List.of(chart(h, caption))));
                body.add(table(h).folded(words));
            }
        }
        body.add(limits(c).open());
        if (c.music() != null) {
            body.add(music(c.music()));
        }
        return new Section("headroom", words.say("correction.headroom-heading"), body);
    }

    private String caption(Headroom h) {
        String boost = words.level(h.boostDb());
        return h.highsBelow().isKnown()
                ? words.say(
                        "correction.headroom-caption",
                        channel(h.channel()),
                        boost,
                        words.frequency(h.frequencyHz()),
                        words.level(h.highsBelow().value()))
                : words.say(
                        "correction.headroom-caption-unknown",
                        channel(h.channel()),
                        boost,
                        words.told(h.highsBelow().reason()));
    }

    private Chart chart(Headroom h, String caption) {
        List<Series> series = new ArrayList<>();
        for (double boost : List.of(0.0, 6.0, 12.0)) {
            if (Math.abs(boost - h.boostDb()) > 1) {
                series.add(series(h, boost, Look.of(h.channel(), true)));
            }
        }
        series.add(series(h, h.boostDb(), Look.of(h.channel(), false)));
        return Chart.of(
                        "correction-headroom-" + h.channel(),
                        words.say(
                                "correction.headroom-title",
                                words.frequency(h.frequencyHz()),
                                words.channel(h.channel())),
                        caption,
                        Axis.linear(
                                words.say("correction.headroom-axis-level"), LOWEST_DB, HIGHEST_DB),
                        Axis.linear(words.say("correction.headroom-axis-compression"), 0, 12),
                        series)
                .withRules(List.of(new Chart.Rule(1, "1 dB")));
    }

    private Series series(Headroom h, double boost, Look look) {
        List<Headroom.Row> rows =
                h.rows().stream()
                        .filter(r -> r.boostDb() == boost && r.compressionDb() != null)
                        .toList();
        return Series.of(
                boost == 0 ? words.say("correction.headroom-no-boost") : words.level(boost),
                look,
                rows.stream().mapToDouble(Headroom.Row::programmeLevelDb).toArray(),
                rows.stream().mapToDouble(Headroom.Row::compressionDb).toArray(),
                1);
    }

    private DataTable table(Headroom h) {
        List<Double> boosts = h.rows().stream().map(Headroom.Row::boostDb).distinct().toList();
        List<String> heads = new ArrayList<>(List.of(words.say("correction.headroom-level")));
        boosts.forEach(b -> heads.add(words.say("correction.headroom-boost", words.signed(b, 1))));
        List<List<String>> rows =
                h.rows().stream()
                        .map(Headroom.Row::programmeLevelDb)
                        .distinct()
                        .map(
                                level -> {
                                    List<String> row = new ArrayList<>();
                                    row.add(words.signed(level, 0));
                                    h.rows().stream()
                                            .filter(r -> r.programmeLevelDb() == level)
                                            .forEach(r -> row.add(cell(r.compressionDb())));
                                    return row;
                                })
                        .toList();
        return new DataTable(
                words.say(
                        "correction.headroom-table",
                        words.frequency(h.frequencyHz()),
                        words.channel(h.channel())),
                heads,
                rows);
    }

    private String cell(Double db) {
        return db == null ? DataTable.NOTHING : words.decimal(db, 1);
    }

    private DataTable limits(Correction c) {
        List<List<String>> rows = new ArrayList<>();
        for (Headroom h : c.headroom()) {
            String name = channel(h.channel());
            String at = words.frequency(h.frequencyHz());
            rows.add(row(words.say("correction.limit-highs-one-db", name, at), h.oneDbLevel()));
            rows.add(row(words.say("correction.limit-highs-below", name), h.highsBelow()));
            rows.add(row(words.say("correction.limit-sine-peak", name), h.highsBelowDbfs()));
            rows.add(
                    row(words.say("correction.limit-saturation", name), h.saturationOutputLevel()));
            rows.add(row(words.say("correction.limit-middle-one-db", name), h.middleOneDbLevel()));
            if (h.loudSweepLevelDb() != null) {
                String level = words.level(h.loudSweepLevelDb());
                rows.add(row(words.say("correction.limit-loss", name, level), h.lossAt10kHz()));
                rows.add(row(words.say("correction.limit-loss-from", name), h.oneDbLossFrom()));
            }
        }
        return new DataTable(
                words.say("correction.limits"),
                List.of(
                        words.say("correction.limits-figure"),
                        words.say("correction.limits-value")),
                rows);
    }

    private List<String> row(String what, Quantity figure) {
        return List.of(what, words.full(figure, false));
    }

    private Markup music(MusicCheck m) {
        Markup out =
                Section.paragraph(
                        words,
                        words.say(
                                "correction.music",
                                m.file(),
                                words.signed(m.peakDbfs(), 1),
                                words.signed(m.filteredPeakDbfs(), 1),
                                words.full(m.lowerForTape(), false)));
        m.channels().forEach(x -> out.add(music(x).folded(words)));
        return out;
    }

    private DataTable music(MusicCheck.Channel x) {
        return new DataTable(
                words.say("correction.music-table", words.channel(x.channel())),
                List.of(
                        words.say("correction.music-band"),
                        words.say("correction.music-level"),
                        words.say("correction.music-boosted"),
                        words.say("correction.music-limit"),
                        words.say("correction.music-over")),
                IntStream.range(0, x.frequencyHz().length)
                        .mapToObj(
                                i ->
                                        List.of(
                                                words.significant(x.frequencyHz()[i], 3),
                                                words.signed(x.levelDb()[i], 1),
                                                words.signed(x.boostedDb()[i], 1),
                                                x.limitDb() == null
                                                        ? DataTable.NOTHING
                                                        : words.signed(x.limitDb()[i], 1),
                                                x.overDb() == null || x.overDb()[i] == 0
                                                        ? DataTable.NOTHING
                                                        : words.decimal(x.overDb()[i], 1)))
                        .toList());
    }

    private String channel(String name) {
        return words.sentence(words.channel(name));
    }
}
