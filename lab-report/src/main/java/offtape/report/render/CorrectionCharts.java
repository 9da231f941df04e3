package offtape.report.render;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.stream.DoubleStream;
import offtape.report.apply.correct.ChannelCorrection;
import offtape.report.apply.correct.Correction;
import offtape.report.apply.correct.NoiseChange;

/**
 * Charts over frequency of a correction: response, filter, equaliser, noise.
 *
 * @param words of the reader
 */
record CorrectionCharts(Wording words) {

    private static final double LOWEST_HZ = 16;
    private static final double HIGHEST_HZ = 22_000;

    /** Response as measured and as it is to be expected. */
    Chart response(Correction correction, String caption) {
        List<Series> series = new ArrayList<>();
        for (ChannelCorrection c : correction.channels()) {
            String before = words.say("correction.curve-before", channel(c.channel()));
            String after = words.say("correction.curve-after", channel(c.channel()));
            series.add(known(before, Look.of(c.channel(), true), c, c.measuredDb()));
            series.add(known(after, Look.of(c.channel(), false), c, c.afterDb()));
        }
        if (correction.target() != null) {
            ChannelCorrection c = correction.channels().get(0);
            series.add(series(words.say("correction.curve-target"), Look.WHOLE, c, c.targetDb()));
        }
        return Chart.of(
                        "correction-response",
                        words.say("correction.response-title"),
                        caption,
                        Axis.audioFrequency(words, LOWEST_HZ, HIGHEST_HZ),
                        levelAxis(words.say("correction.axis-level"), series, -20),
                        series)
                .withSides(
                        new Chart.Sides(
                                words.say("correction.side-before"),
                                words.say("correction.side-after")));
    }

    /** Gain of filter and equaliser. */
    Chart filter(Correction correction, String caption) {
        List<Series> series = new ArrayList<>();
        for (ChannelCorrection c : correction.channels()) {
            String filter = words.say("correction.curve-filter", channel(c.channel()));
            String bands = words.say("correction.curve-bands", channel(c.channel()));
            series.add(series(filter, Look.of(c.channel(), false), c, c.gainDb()));
            series.add(series(bands, Look.of(c.channel(), true), c, c.equaliserDb()));
        }
        Chart.Rule limit =
                new Chart.Rule(correction.mostBoostDb(), words.say("correction.rule-boost"));
        return Chart.of(
                        "correction-filter",
                        words.say("correction.filter-title"),
                        caption,
                        Axis.audioFrequency(words, LOWEST_HZ, HIGHEST_HZ),
                        levelAxis(words.say("correction.axis-gain"), series, -20),
                        series)
                .withRules(List.of(limit))
                .withSides(
                        new Chart.Sides(
                                words.say("correction.side-bands"),
                                words.say("correction.side-filter")));
    }

    /** Known as well as the response that was measured. */
    private static Series known(String label, Look look, ChannelCorrection c, double[] db) {
        return Series.within(
                label, look, c.frequencyHz(), db, c.uncertaintyDb(), ResponseSection.MOST_DECIMALS);
    }

    /** Set by computing, so told as finely as anybody can set it. */
    private static Series series(String label, Look look, ChannelCorrection c, double[] db) {
        return Series.of(label, look, c.frequencyHz(), db, 1);
    }

    /** Noise in third-octave bands as it is and behind the filter. */
    Chart noise(List<NoiseChange> drawn, String caption) {
        List<Series> series = new ArrayList<>();
        for (NoiseChange n : drawn) {
            series.add(
                    Series.of(
                            words.say("correction.curve-before-tape", channel(n.channel())),
                            Look.of(n.channel(), false),
                            n.frequencyHz(),
                            n.levelDb(),
                            1));
            series.add(
                    Series.of(
                            words.say("correction.curve-after-tape", channel(n.channel())),
                            Look.of(n.channel(), true),
                            n.frequencyHz(),
                            n.afterDb(),
                            1));
        }
        return Chart.of(
                        "correction-noise",
                        words.say("correction.noise-title"),
                        caption,
                        Axis.audioFrequency(words, 20, 20_000),
                        levelAxis(words.say("correction.axis-noise"), series, -150),
                        series)
                .withSides(
                        new Chart.Sides(
                                words.say("correction.side-after-tape"),
                                words.say("correction.side-before-tape")));
    }

    private String channel(String name) {
        return words.sentence(words.channel(name));
    }

    private static Axis levelAxis(String title, List<Series> series, double lowest) {
        Function<Series, DoubleStream> values = s -> Arrays.stream(s.y()).filter(Double::isFinite);
        double low = series.stream().flatMapToDouble(values::apply).min().orElse(0);
        double high = series.stream().flatMapToDouble(values::apply).max().orElse(0);
        return Axis.linear(
                title,
                Math.max(lowest, Math.min(5 * Math.floor((low - 1) / 5), high - 10)),
                5 * Math.ceil((high + 2) / 5));
    }
}
