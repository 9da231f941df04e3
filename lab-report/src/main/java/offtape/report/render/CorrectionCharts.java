package offtape.report.render;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.stream.DoubleStream;
import offtape.report.apply.correct.ChannelCorrection;
import offtape.report.apply.correct.Correction;
import offtape.report.apply.correct.NoiseChange;

/** Charts over frequency of a correction: response, filter, equaliser, noise. */
final class CorrectionCharts {

    private static final double LOWEST_HZ = 16;
    private static final double HIGHEST_HZ = 22_000;

    private CorrectionCharts() {}

    /** Response as measured and as it is to be expected. */
    static Chart response(Correction correction, String caption) {
        List<Series> series = new ArrayList<>();
        for (ChannelCorrection c : correction.channels()) {
            String name = Words.sentence(c.channel());
            series.add(known(name + " before", Look.of(c.channel(), true), c, c.measuredDb()));
            series.add(known(name + " after", Look.of(c.channel(), false), c, c.afterDb()));
        }
        if (correction.target() != null) {
            ChannelCorrection c = correction.channels().get(0);
            series.add(series("Target", Look.WHOLE, c, c.targetDb()));
        }
        return Chart.of(
                        "correction-response",
                        "Frequency response before and after the correction",
                        caption,
                        Axis.audioFrequency(LOWEST_HZ, HIGHEST_HZ),
                        levelAxis("Level, dB re 1 kHz", series, -20),
                        series)
                .withSides(new Chart.Sides("Before", "After"));
    }

    /** Gain of filter and equaliser. */
    static Chart filter(Correction correction, String caption) {
        List<Series> series = new ArrayList<>();
        for (ChannelCorrection c : correction.channels()) {
            String name = Words.sentence(c.channel());
            series.add(series(name + " filter", Look.of(c.channel(), false), c, c.gainDb()));
            series.add(series(name + " bands", Look.of(c.channel(), true), c, c.equaliserDb()));
        }
        return Chart.of(
                        "correction-filter",
                        "Gain of the filter and of the equaliser bands",
                        caption,
                        Axis.audioFrequency(LOWEST_HZ, HIGHEST_HZ),
                        levelAxis("Gain, dB re 1 kHz", series, -20),
                        series)
                .withRules(List.of(new Chart.Rule(correction.mostBoostDb(), "limit of boost")))
                .withSides(new Chart.Sides("Bands", "Filter"));
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
    static Chart noise(List<NoiseChange> drawn, String caption) {
        List<Series> series = new ArrayList<>();
        for (NoiseChange n : drawn) {
            String name = Words.sentence(n.channel());
            series.add(
                    Series.of(
                            name + " before tape",
                            Look.of(n.channel(), false),
                            n.frequencyHz(),
                            n.levelDb(),
                            1));
            series.add(
                    Series.of(
                            name + " after tape",
                            Look.of(n.channel(), true),
                            n.frequencyHz(),
                            n.afterDb(),
                            1));
        }
        return Chart.of(
                        "correction-noise",
                        "Hiss in third-octave bands, either way",
                        caption,
                        Axis.audioFrequency(20, 20_000),
                        levelAxis("Level in the band, dB re reference", series, -150),
                        series)
                .withSides(new Chart.Sides("After tape", "Before tape"));
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
