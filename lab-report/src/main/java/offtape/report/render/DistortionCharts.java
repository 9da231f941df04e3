package offtape.report.render;

import java.util.List;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import offtape.report.headline.Find;
import offtape.report.result.Distortion;
import offtape.report.result.FittedCurve;
import offtape.report.result.LadderStep;
import offtape.report.result.Results;

/**
 * The ladders drawn over record level.
 *
 * @param words of the reader's language
 */
record DistortionCharts(Wording words) {

    private static final int LOWER_HEIGHT = 280;

    /** The ladders on which K3 is told. */
    static List<Distortion> toneLadders(Results results) {
        return Find.CHANNELS.stream().flatMap(c -> Find.toneLadder(results, c).stream()).toList();
    }

    /** The ladders of treble tones. */
    static List<Distortion> trebleLadders(Results results) {
        return Find.CHANNELS.stream().flatMap(c -> Find.trebleLadder(results, c).stream()).toList();
    }

    /** Whether a ladder has a tone that was found. */
    static boolean hasSteps(Distortion ladder) {
        return ladder.steps().stream().anyMatch(s -> s.replayLevelDb() != null);
    }

    /** K3 over record level. */
    Chart k3(Results results, LimitLines limits, String caption) {
        List<Distortion> ladders = toneLadders(results);
        return Chart.of(
                        "k3-chart",
                        words.say("distortion.k3-title"),
                        caption,
                        recordAxis(words, ladders),
                        k3Axis(words, ladders),
                        ladders.stream().map(d -> k3Series(d, channel(d), false)).toList())
                .withRules(k3Rules())
                .withMarks(leftOut(ladders, LadderStep::k3StandsOut, Reading.K3))
                .withLimits(limits.k3(recordAxis(words, ladders), k3Axis(words, ladders)))
                .withBands(bands(results));
    }

    /** The lines at which K3 is judged. */
    static List<Chart.Rule> k3Rules() {
        return List.of(new Chart.Rule(3, "3 %"), new Chart.Rule(1, "1 %"));
    }

    /**
     * K3 of one ladder where it stands clear of the noise: the fitted curve, and the steps above
     * its end.
     */
    static Series k3Series(Distortion ladder, String label, boolean second) {
        FittedCurve curve = ladder.k3Curve();
        if (curve == null) {
            return series(ladder, label, second, LadderStep::k3StandsOut, Reading.K3);
        }
        double last = curve.recordLevelDb()[curve.recordLevelDb().length - 1];
        Series above =
                series(
                        ladder,
                        label,
                        second,
                        s -> s.k3StandsOut() && s.recordLevelDb() > last,
                        Reading.K3);
        return new Series(
                label,
                above.look(),
                DoubleStream.concat(
                                DoubleStream.of(curve.recordLevelDb()), DoubleStream.of(above.x()))
                        .toArray(),
                DoubleStream.concat(DoubleStream.of(curve.value()), DoubleStream.of(above.y()))
                        .toArray(),
                IntStream.concat(
                                DoubleStream.of(curve.uncertainty()).mapToInt(Numbers::decimals),
                                IntStream.of(above.decimals()))
                        .toArray());
    }

    private List<Chart.Mark> leftOut(
            List<Distortion> ladders, Predicate<LadderStep> shown, Reading reading) {
        return ladders.stream()
                .flatMap(
                        d ->
                                d.steps().stream()
                                        .filter(s -> s.noise().leftOut() && shown.test(s))
                                        .map(s -> leftOut(d, s, reading)))
                .toList();
    }

    private Chart.Mark leftOut(Distortion d, LadderStep s, Reading reading) {
        return new Chart.Mark(
                s.recordLevelDb(),
                reading.of.apply(s),
                reading.decimals(s),
                words.say("distortion.left-out"),
                Look.of(d.channel(), false),
                false);
    }

    /** A logarithmic axis that holds 1 % and 3 % and every reading above a hundredth percent. */
    static Axis k3Axis(Wording words, List<Distortion> ladders) {
        double[] readings =
                ladders.stream()
                        .flatMap(d -> d.steps().stream())
                        .filter(LadderStep::k3StandsOut)
                        .mapToDouble(LadderStep::k3Percent)
                        .toArray();
        double low = DoubleStream.of(readings).min().orElse(0.1);
        double high = DoubleStream.of(readings).max().orElse(10);
        return Axis.oneThree(
                words.say("distortion.axis-k3"),
                Math.max(0.003, Math.min(0.3, low / 1.5)),
                Math.min(100, Math.max(10, high * 1.3)));
    }

    /** Compression over record level. */
    Chart compression(Results results, String caption) {
        List<Distortion> ladders = toneLadders(results);
        double high =
                ladders.stream()
                        .flatMap(d -> d.steps().stream())
                        .filter(s -> s.compressionDb() != null)
                        .mapToDouble(LadderStep::compressionDb)
                        .max()
                        .orElse(0);
        return Chart.of(
                        "compression-chart",
                        words.say("distortion.compression-title"),
                        caption,
                        recordAxis(words, ladders),
                        Axis.linear(
                                words.say("distortion.axis-compression"),
                                -1,
                                Math.max(4, Math.ceil(high))),
                        ladders.stream()
                                .map(
                                        d ->
                                                series(
                                                        d,
                                                        channel(d),
                                                        false,
                                                        s -> s.compressionDb() != null,
                                                        Reading.COMPRESSION))
                                .toList())
                .withHeight(LOWER_HEIGHT)
                .withRules(List.of(new Chart.Rule(1, "1 dB")))
                .withMarks(leftOut(ladders, s -> s.compressionDb() != null, Reading.COMPRESSION))
                .withBands(bands(results));
    }

    /** What comes back of treble tones over what was recorded. */
    Chart saturation(List<Distortion> treble, String caption) {
        double[] replay =
                treble.stream()
                        .flatMap(d -> d.steps().stream())
                        .filter(s -> s.replayLevelDb() != null)
                        .mapToDouble(LadderStep::replayLevelDb)
                        .toArray();
        double low = DoubleStream.of(replay).min().orElse(-20);
        double high = DoubleStream.of(replay).max().orElse(0);
        return Chart.of(
                        "saturation-chart",
                        words.say("distortion.saturation-title"),
                        caption,
                        recordAxis(words, treble),
                        Axis.linear(
                                words.say("distortion.axis-replay"),
                                5 * Math.floor((low - 1) / 5),
                                5 * Math.ceil((high + 1) / 5)),
                        treble.stream()
                                .map(
                                        d ->
                                                series(
                                                        d,
                                                        channel(d),
                                                        false,
                                                        s -> s.replayLevelDb() != null,
                                                        Reading.REPLAY))
                                .toList())
                .withHeight(LOWER_HEIGHT);
    }

    /** From the lowest to the highest record level of the ladders. */
    static Axis recordAxis(Wording words, List<Distortion> ladders) {
        double[] levels =
                ladders.stream()
                        .flatMap(d -> d.steps().stream())
                        .mapToDouble(LadderStep::recordLevelDb)
                        .toArray();
        double low = DoubleStream.of(levels).min().orElse(-20);
        double high = DoubleStream.of(levels).max().orElse(12);
        return Axis.linear(words.say("distortion.axis-record"), low, high > low ? high : low + 1);
    }

    private List<Chart.Band> bands(Results results) {
        return UsefulRange.shared(results).map(this::band).map(List::of).orElse(List.of());
    }

    private Chart.Band band(UsefulRange range) {
        return new Chart.Band(range.fromDb(), range.toDb(), words.say("distortion.useful-range"));
    }

    private String channel(Distortion ladder) {
        return words.sentence(words.channel(ladder.channel()));
    }

    private static Series series(
            Distortion ladder,
            String label,
            boolean second,
            Predicate<LadderStep> kept,
            Reading reading) {
        List<LadderStep> steps =
                ladder.steps().stream().filter(kept).filter(s -> !s.noise().leftOut()).toList();
        return new Series(
                label,
                Look.of(ladder.channel(), second),
                steps.stream().mapToDouble(LadderStep::recordLevelDb).toArray(),
                steps.stream().mapToDouble(reading.of::apply).toArray(),
                steps.stream().mapToInt(reading::decimals).toArray());
    }

    /** What is read of a step, and how well that is known. */
    private enum Reading {
        K3(LadderStep::k3Percent, s -> s.noise().k3UncertaintyPercent(), 4),
        COMPRESSION(LadderStep::compressionDb, s -> s.noise().replayUncertaintyDb(), 2),
        REPLAY(LadderStep::replayLevelDb, s -> s.noise().replayUncertaintyDb(), 2);

        /** Decimals if nothing says how well it is known. */
        private static final int UNKNOWN_DECIMALS = 1;

        private final Function<LadderStep, Double> of;
        private final Function<LadderStep, Double> uncertainty;
        private final int most;

        Reading(
                Function<LadderStep, Double> of,
                Function<LadderStep, Double> uncertainty,
                int most) {
            this.of = of;
            this.uncertainty = uncertainty;
            this.most = most;
        }

        int decimals(LadderStep step) {
            Double known = uncertainty.apply(step);
            return known == null ? UNKNOWN_DECIMALS : Math.min(most, Numbers.decimals(known));
        }
    }
}
