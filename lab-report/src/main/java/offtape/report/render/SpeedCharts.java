package offtape.report.render;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import offtape.core.unit.Quantity;
import offtape.report.result.Speed;
import offtape.report.result.SpeedComponent;
import offtape.report.result.SpeedSpectrum;
import offtape.report.result.SpeedTrace;

/** The speed deviation drawn over time and over rate. */
final class SpeedCharts {

    /** How many components are named on the chart and in its caption. */
    static final int LABELLED = 5;

    /** Digits in which a spectrum is told: what a line is beside it is in the table. */
    static final int SPECTRUM_DIGITS = 2;

    private static final int LONGEST = 26;
    private static final int TRACE_DECIMALS = 3;
    private static final int TRACE_HEIGHT = 300;
    private static final int MOST_STRETCHES = 400;
    private static final int TABLE_ROWS = 30;

    private SpeedCharts() {}

    /** Whether there is a deviation over time to draw. */
    static boolean hasTrace(Speed speed) {
        SpeedTrace trace = speed.trace();
        return trace != null && trace.seconds().length > 0;
    }

    /** Whether there is a spectrum with a rate above zero to draw. */
    static boolean hasSpectrum(Speed speed) {
        SpeedSpectrum spectrum = speed.spectrum();
        return spectrum != null
                && IntStream.range(0, spectrum.frequencyHz().length)
                        .anyMatch(
                                i ->
                                        spectrum.frequencyHz()[i] > 0
                                                && spectrum.peakPercent()[i] > 0);
    }

    /** Deviation over time, an area between the extremes of each stretch. */
    static Chart trace(Wording words, Speed speed, String caption) {
        return trace(
                words,
                "speed-trace",
                words.say("speed.trace-title"),
                speed.trace(),
                decimals(speed.unweightedPeak()),
                caption);
    }

    /** No extreme is known better than the highest of them. */
    static int decimals(Quantity peak) {
        return peak != null && peak.isKnown()
                ? Math.min(TRACE_DECIMALS, Numbers.decimals(peak.uncertainty()))
                : TRACE_DECIMALS;
    }

    /** As above, of any deviation, told with so many decimals. */
    static Chart trace(
            Wording words,
            String id,
            String title,
            SpeedTrace whole,
            int decimals,
            String caption) {
        SpeedTrace trace = thinned(whole, MOST_STRETCHES);
        double reach =
                DoubleStream.concat(
                                Arrays.stream(trace.lowestPercent()),
                                Arrays.stream(trace.highestPercent()))
                        .map(Math::abs)
                        .max()
                        .orElse(0);
        double step = Axis.niceStep(Math.max(reach, 0.001) / 3);
        double limit = step * Math.ceil(1.02 * Math.max(reach, 0.001) / step);
        double last = trace.seconds()[trace.seconds().length - 1];
        return Chart.of(
                        id,
                        title,
                        caption,
                        Axis.linear(words.say("page.axis-time"), 0, Math.max(last, 1)),
                        Axis.linear(words.say("speed.axis-deviation"), -limit, limit),
                        List.of(outline(trace)))
                .withHeight(TRACE_HEIGHT)
                .withTold(
                        List.of(
                                edge(
                                        words.say("speed.highest"),
                                        trace,
                                        trace.highestPercent(),
                                        decimals),
                                edge(
                                        words.say("speed.lowest"),
                                        trace,
                                        trace.lowestPercent(),
                                        decimals)));
    }

    private static Series edge(String name, SpeedTrace trace, double[] percent, int decimals) {
        return Series.of(name, Look.EXTREMES, trace.seconds(), percent, decimals);
    }

    private static Series outline(SpeedTrace trace) {
        int n = trace.seconds().length;
        double[] x = new double[2 * n];
        double[] y = new double[2 * n];
        for (int i = 0; i < n; i++) {
            x[i] = trace.seconds()[i];
            y[i] = trace.highestPercent()[i];
            x[2 * n - 1 - i] = trace.seconds()[i];
            y[2 * n - 1 - i] = trace.lowestPercent()[i];
        }
        return Series.of("", Look.EXTREMES, x, y, 0);
    }

    /** Joins neighbouring stretches until there are no more than {@code most}. */
    static SpeedTrace thinned(SpeedTrace trace, int most) {
        int n = trace.seconds().length;
        int join = (n + most - 1) / most;
        int[] starts = IntStream.iterate(0, i -> i < n, i -> i + join).toArray();
        return new SpeedTrace(
                Arrays.stream(starts)
                        .mapToDouble(
                                i ->
                                        (trace.seconds()[i]
                                                        + trace.seconds()[
                                                                Math.min(n, i + join) - 1])
                                                / 2)
                        .toArray(),
                Arrays.stream(starts)
                        .mapToDouble(i -> part(trace.lowestPercent(), i, join).min().orElseThrow())
                        .toArray(),
                Arrays.stream(starts)
                        .mapToDouble(i -> part(trace.highestPercent(), i, join).max().orElseThrow())
                        .toArray());
    }

    private static DoubleStream part(double[] values, int from, int length) {
        return Arrays.stream(values, from, Math.min(values.length, from + length));
    }

    /** Peak deviation over rate with the strongest components named. */
    static Chart spectrum(Wording words, Speed speed, String caption) {
        double[] f = speed.spectrum().frequencyHz();
        double[] peak = speed.spectrum().peakPercent();
        double high =
                DoubleStream.concat(
                                Arrays.stream(peak),
                                speed.components().stream()
                                        .mapToDouble(SpeedComponent::peakPercent))
                        .max()
                        .orElseThrow();
        double top = Axis.niceStep(high * 1.5);
        double bottom = top / 500;
        return Chart.of(
                        "speed-spectrum",
                        words.say("speed.spectrum-title"),
                        caption,
                        rateAxis(words, f),
                        Axis.oneTwoFive(words.say("speed.axis-peak"), bottom, top),
                        List.of(Series.significant("", Look.WHOLE, f, peak, SPECTRUM_DIGITS)))
                .withMarks(marks(words, speed.components()));
    }

    private static Axis rateAxis(Wording words, double[] f) {
        double low = Arrays.stream(f).filter(v -> v > 0).min().orElseThrow();
        double high = Arrays.stream(f).max().orElseThrow();
        return Axis.oneTwoFive(
                words.say("page.axis-rate"),
                Math.max(0.1, Math.min(low, 0.2)),
                Math.max(high, 200));
    }

    /** The strongest lines. */
    static List<Chart.Mark> marks(Wording words, List<SpeedComponent> components) {
        return components.stream()
                .filter(c -> c.middleHz() > 0 && c.peakPercent() > 0)
                .limit(LABELLED)
                .map(
                        c ->
                                new Chart.Mark(
                                        c.middleHz(),
                                        c.peakPercent(),
                                        Numbers.decimals(c.peakUncertaintyPercent()),
                                        Wording.isGiven(c.part())
                                                ? shortened(words, c.part())
                                                : words.frequency(c.middleHz()),
                                        Look.WHOLE,
                                        false))
                .toList();
    }

    private static String shortened(Wording words, String part) {
        String plain = words.told(part).replace(" " + words.say("speed.harmonic"), "");
        return plain.length() <= LONGEST ? plain : plain.substring(0, LONGEST - 1) + "…";
    }

    /** The deviation over time in some thirty stretches. */
    static DataTable traceTable(Wording words, Speed speed) {
        List<List<String>> rows = new ArrayList<>();
        if (hasTrace(speed)) {
            SpeedTrace trace = thinned(speed.trace(), TABLE_ROWS);
            for (int i = 0; i < trace.seconds().length; i++) {
                rows.add(
                        List.of(
                                words.decimal(trace.seconds()[i], 1),
                                words.signed(trace.lowestPercent()[i], 3),
                                words.signed(trace.highestPercent()[i], 3)));
            }
        }
        return new DataTable(
                words.say("speed.trace-table"),
                List.of(
                        words.say("speed.column-middle"),
                        words.say("speed.column-lowest"),
                        words.say("speed.column-highest")),
                rows);
    }
}
