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

/**
 * How hot to record: distortion against noise.
 *
 * @param words of the reader
 */
record CorrectionLevelSection(Wording words) {

    private static final double LEAST_PERCENT = 0.03;
    private static final double MOST_PERCENT = 30;

    /** The section. */
    Section of(Correction c) {
        Markup body = Section.paragraph(words, words.say("correction.level"));
        for (int i = 0; i < c.levels().size(); i++) {
            body.add(session(c.levels().get(i), i));
        }
        return new Section("level", words.say("correction.level-heading"), body);
    }

    private Markup session(OperatingLevels o, int number) {
        Markup out = new Markup();
        List<ChannelLevels> drawn =
                o.channels().stream().filter(x -> x.dynamicRangeDb().length > 1).toList();
        String which = which(o);
        if (!drawn.isEmpty()) {
            String caption = words.say("correction.level-caption", which, sweetSpot(o));
            Chart chart = chart(o, drawn, number, caption);
            out.add(Section.figure(words, caption, List.of(chart)));
            out.add(ChartTable.of(words, chart).folded(words));
        }
        out.add(pair(o, which).open());
        out.add(channels(o, which).folded(words));
        return out;
    }

    /** The tape speed and the tape, as the start of a sentence. */
    String which(OperatingLevels o) {
        String speed =
                o.tapeSpeedMmPerS() == null
                        ? words.say("correction.speed-unknown")
                        : words.say(
                                "correction.speed", words.significant(o.tapeSpeedMmPerS() / 10, 4));
        return Wording.isGiven(o.tape())
                ? words.say("correction.speed-tape", speed, o.tape())
                : speed;
    }

    /** From which peaks to which tape does its work. */
    String sweetSpot(OperatingLevels o) {
        Optional<PairLevel> one = o.atK3(1);
        Optional<PairLevel> oneDb = o.atOneDb();
        if (one.isEmpty()
                || oneDb.isEmpty()
                || !one.get().peaksDbfs().isKnown()
                || !oneDb.get().peaksDbfs().isKnown()) {
            return words.say("correction.sweet-spot-unknown");
        }
        return words.say(
                "correction.sweet-spot",
                words.signed(one.get().peaksDbfs().value(), 1),
                words.signed(oneDb.get().peaksDbfs().value(), 1));
    }

    private Chart chart(OperatingLevels o, List<ChannelLevels> drawn, int number, String caption) {
        double low = 200;
        double high = -200;
        List<Series> series = new ArrayList<>();
        List<Chart.Mark> marks = new ArrayList<>();
        for (ChannelLevels c : drawn) {
            low = Math.min(low, Arrays.stream(c.dynamicRangeDb()).min().orElse(low));
            high = Math.max(high, Arrays.stream(c.dynamicRangeDb()).max().orElse(high));
            series.add(
                    Series.of(
                            channel(c),
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
                                words.say("correction.range-title"),
                                caption,
                                Axis.oneThree(
                                        words.say("correction.range-k3"),
                                        LEAST_PERCENT,
                                        MOST_PERCENT),
                                Axis.linear(
                                        words.say("correction.range-level"),
                                        5 * Math.floor((low - 1) / 5),
                                        5 * Math.ceil((high + 3) / 5)),
                                series)
                        .withMarks(marks);
        return sweetBand(o, drawn).map(b -> chart.withBands(List.of(b))).orElse(chart);
    }

    private Chart.Mark mark(ChannelLevels c, LevelAtK3 l) {
        return new Chart.Mark(
                l.k3Percent(),
                l.dynamicRange().value(),
                Math.min(
                        ResponseSection.MOST_DECIMALS,
                        Numbers.decimals(l.dynamicRange().uncertainty())),
                words.say(
                        "correction.range-mark",
                        channel(c).substring(0, 1),
                        words.signed(l.peaksDbfs().value(), 1)),
                Look.of(c.channel(), false),
                false);
    }

    private Optional<Chart.Band> sweetBand(OperatingLevels o, List<ChannelLevels> drawn) {
        PairLevel oneDb = o.atOneDb().orElse(null);
        if (oneDb == null || !oneDb.recordLevel().isKnown()) {
            return Optional.empty();
        }
        return drawn.stream()
                .filter(c -> c.channel().equals(oneDb.channel()))
                .map(c -> c.k3At(oneDb.recordLevel().value()))
                .filter(k3 -> k3 != null && k3 > 1 && k3 < MOST_PERCENT)
                .findFirst()
                .map(k3 -> new Chart.Band(1, k3, words.say("correction.range-sweet-spot")));
    }

    private DataTable pair(OperatingLevels o, String which) {
        return new DataTable(
                words.say("correction.pair", which),
                List.of(
                        words.say("correction.pair-what"),
                        words.say("correction.pair-peaks"),
                        words.say("correction.pair-level"),
                        words.say("correction.channel")),
                o.pair().stream()
                        .map(
                                p ->
                                        List.of(
                                                what(p),
                                                words.full(p.peaksDbfs(), true),
                                                words.full(p.recordLevel(), true),
                                                p.channel() == null
                                                        ? DataTable.NOTHING
                                                        : words.channel(p.channel())))
                        .toList());
    }

    private String what(PairLevel p) {
        return p.what().equals(PairLevel.K3)
                ? words.say("correction.pair-k3", words.significant(p.value(), 3))
                : words.say("correction.pair-compression");
    }

    private DataTable channels(OperatingLevels o, String which) {
        List<List<String>> rows = new ArrayList<>();
        for (ChannelLevels c : o.channels()) {
            for (LevelAtK3 l : c.atK3()) {
                rows.add(
                        List.of(
                                words.say(
                                        "correction.channels-k3",
                                        channel(c),
                                        words.significant(l.k3Percent(), 3)),
                                words.full(l.recordLevel(), true),
                                words.full(l.peaksDbfs(), true),
                                words.full(l.replayLevel(), true),
                                words.full(l.dynamicRange(), false)));
            }
            rows.add(
                    List.of(
                            words.say("correction.channels-compression", channel(c)),
                            words.full(c.oneDbLevel(), true),
                            words.full(c.oneDbDbfs(), true),
                            DataTable.NOTHING,
                            DataTable.NOTHING));
        }
        return new DataTable(
                words.say("correction.channels", which),
                List.of(
                        words.say("correction.channels-what"),
                        words.say("correction.channels-recorded"),
                        words.say("correction.pair-peaks"),
                        words.say("correction.channels-replayed"),
                        words.say("correction.channels-range")),
                rows);
    }

    private String channel(ChannelLevels c) {
        return words.sentence(words.channel(c.channel()));
    }
}
