package offtape.report.render;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import offtape.core.unit.Quantity;
import offtape.report.result.Channels;
import offtape.report.result.CrosstalkCurve;
import offtape.report.result.DelayTrace;

/**
 * The delay between the channels drawn over time, and crosstalk over frequency.
 *
 * @param words of the reader's language
 */
record ChannelCharts(Wording words) {

    private static final int TRACE_HEIGHT = 300;
    private static final double LEAST_REACH_US = 0.05;

    /** What leaks less is of no interest, dB. */
    private static final double LOWEST_DB = -100;

    private static final int MOST_DECIMALS = 2;

    /** Decimals of the delay if nothing says how well it is known. */
    private static final int UNKNOWN_DECIMALS = 1;

    /** Whether there is a delay over time to draw. */
    static boolean hasTrace(Channels c) {
        return c.delayTrace() != null && c.delayTrace().seconds().length > 1;
    }

    /** Whether there is a curve of crosstalk with a point at least. */
    static boolean hasCrosstalk(Channels c) {
        return c.crosstalk().stream().anyMatch(curve -> curve.frequencyHz().length > 0);
    }

    /** The delay over time. */
    Chart trace(Channels c, LimitLines limits, String caption) {
        DelayTrace trace = c.delayTrace();
        double[] us = trace.microseconds();
        double low = Arrays.stream(us).min().orElseThrow();
        double high = Arrays.stream(us).max().orElseThrow();
        double middle = (low + high) / 2;
        double reach = Math.max(LEAST_REACH_US, 0.6 * (high - low));
        double step = Axis.niceStep(reach / 3);
        double last = trace.seconds()[trace.seconds().length - 1];
        Axis time = Axis.linear(words.say("page.axis-time"), 0, Math.max(last, 1));
        Axis delay =
                Axis.linear(
                        words.say("channels.axis-delay"),
                        step * Math.floor((middle - reach) / step),
                        step * Math.ceil((middle + reach) / step));
        return Chart.of(
                        "delay-trace",
                        words.say("channels.trace-title"),
                        caption,
                        time,
                        delay,
                        List.of(
                                Series.of(
                                        "",
                                        Look.WHOLE,
                                        trace.seconds(),
                                        us,
                                        decimals(c.interchannelDelay()))))
                .withHeight(TRACE_HEIGHT)
                .withLimits(limits.delay(time, delay));
    }

    /** A moment of the trace is known no better than the mean over it. */
    private static int decimals(Quantity delay) {
        return delay != null && delay.isKnown()
                ? Numbers.decimals(delay.uncertainty())
                : UNKNOWN_DECIMALS;
    }

    /** Crosstalk in both directions, and the floor under which it is not told. */
    Chart crosstalk(Channels c, LimitLines limits, String caption) {
        double[] levels =
                c.crosstalk().stream()
                        .flatMapToDouble(
                                curve ->
                                        DoubleStream.concat(
                                                known(curve), Arrays.stream(curve.floorDb())))
                        .toArray();
        double loudest = DoubleStream.of(levels).max().orElseThrow();
        double high = Math.max(loudest, limits.highestCrosstalk().orElse(loudest));
        // a path without crosstalk or noise has nothing above the lowest level of interest
        double lowest = Math.min(LOWEST_DB, high - 20);
        double low = Math.max(lowest, DoubleStream.of(levels).min().orElseThrow());
        List<Series> series = new ArrayList<>();
        List<Series> told = new ArrayList<>();
        for (CrosstalkCurve curve : c.crosstalk()) {
            series.addAll(runs(curve));
            series.add(floor(curve));
            told.add(part(curve, heard(curve), name(curve)));
            told.add(floor(curve));
        }
        Axis crosstalk =
                Axis.linear(
                        words.say("channels.axis-crosstalk"),
                        10 * Math.floor((low - 2) / 10),
                        10 * Math.ceil((high + 4) / 10));
        return Chart.of(
                        "crosstalk-chart",
                        words.say("channels.crosstalk-title"),
                        caption,
                        Axis.audioFrequency(words, 20, 20_000),
                        crosstalk,
                        series)
                .withLimits(limits.crosstalk(crosstalk))
                .withTold(told);
    }

    private Series floor(CrosstalkCurve curve) {
        return Series.of(
                words.say("channels.floor", name(curve).toLowerCase(words.language().locale())),
                Look.of(curve.into(), true),
                curve.frequencyHz(),
                curve.floorDb(),
                0);
    }

    /** {@code Left into right}. */
    String name(CrosstalkCurve curve) {
        return words.say(
                "channels.into",
                words.sentence(words.channel(curve.from())),
                words.channel(curve.into()));
    }

    private static DoubleStream known(CrosstalkCurve curve) {
        return Arrays.stream(curve.crosstalkDb())
                .filter(Objects::nonNull)
                .mapToDouble(Double::doubleValue);
    }

    /** The stretches of a curve that are known; the longest bears its name. */
    private List<Series> runs(CrosstalkCurve curve) {
        List<int[]> runs = new ArrayList<>();
        int start = -1;
        int n = curve.frequencyHz().length;
        for (int i = 0; i <= n; i++) {
            boolean there = i < n && curve.crosstalkDb()[i] != null;
            if (there && start < 0) {
                start = i;
            } else if (!there && start >= 0) {
                runs.add(new int[] {start, i});
                start = -1;
            }
        }
        int longest = runs.stream().mapToInt(r -> r[1] - r[0]).max().orElse(0);
        List<Series> series = new ArrayList<>();
        boolean named = false;
        for (int[] run : runs) {
            boolean names = !named && run[1] - run[0] == longest;
            named |= names;
            series.add(
                    part(
                            curve,
                            IntStream.range(run[0], run[1]).toArray(),
                            names ? name(curve) : ""));
        }
        return series;
    }

    /** The bands in which crosstalk is known. */
    private static int[] heard(CrosstalkCurve curve) {
        return IntStream.range(0, curve.frequencyHz().length)
                .filter(i -> curve.crosstalkDb()[i] != null)
                .toArray();
    }

    private Series part(CrosstalkCurve curve, int[] bands, String label) {
        return Series.within(
                label,
                Look.of(curve.into(), false),
                Arrays.stream(bands).mapToDouble(i -> curve.frequencyHz()[i]).toArray(),
                Arrays.stream(bands).mapToDouble(i -> curve.crosstalkDb()[i]).toArray(),
                Arrays.stream(bands).mapToDouble(i -> curve.uncertaintyDb()[i]).toArray(),
                MOST_DECIMALS);
    }

    /** Crosstalk in octaves. */
    DataTable crosstalkTable(Channels c) {
        List<List<String>> rows = new ArrayList<>();
        for (CrosstalkCurve curve : c.crosstalk()) {
            for (int i = 0; i < curve.frequencyHz().length; i += 3) {
                Double db = curve.crosstalkDb()[i];
                rows.add(
                        List.of(
                                words.frequency(curve.frequencyHz()[i]),
                                name(curve),
                                db == null
                                        ? words.say(
                                                "channels.below",
                                                words.decimal(curve.floorDb()[i], 1))
                                        : words.decimal(db, 1),
                                db == null
                                        ? DataTable.NOTHING
                                        : words.decimal(curve.uncertaintyDb()[i], 1)));
            }
        }
        return new DataTable(
                words.say("channels.crosstalk-table"),
                List.of(
                        words.say("channels.head-frequency"),
                        words.say("channels.head-direction"),
                        words.say("channels.head-crosstalk"),
                        words.say("channels.head-uncertainty")),
                rows);
    }
}
