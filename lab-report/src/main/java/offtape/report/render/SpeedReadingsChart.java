package offtape.report.render;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.result.Speed;
import offtape.report.result.SpeedReadings;
import offtape.report.result.WorstTenSeconds;

/** The weighted reading over time, with the worst ten seconds marked. */
final class SpeedReadingsChart {

    private static final int HEIGHT = 260;
    private static final int TABLE_ROWS = 30;
    private static final double WORST_S = 10;

    /** Readings under a limit so many times as high as they would be a flat line. */
    private static final double FLAT = 5;

    /** Decimals of a reading if nothing says how well it is known. */
    private static final int UNKNOWN_DECIMALS = 2;

    private SpeedReadingsChart() {}

    /** Whether there is a reading over time to draw. */
    static boolean isThere(Speed speed) {
        SpeedReadings readings = speed.readings();
        return readings != null && readings.seconds().length > 1;
    }

    /** The chart. */
    static Chart of(Wording words, Speed speed, LimitLines limits, String caption) {
        SpeedReadings readings = speed.readings();
        double[] seconds = readings.seconds();
        Axis time =
                Axis.linear(
                        words.say("page.axis-time"), 0, Math.max(1, seconds[seconds.length - 1]));
        Axis percent = percentAxis(words, readings, limits);
        return Chart.of(
                        "speed-readings",
                        words.say("speed.readings-title"),
                        caption,
                        time,
                        percent,
                        List.of(
                                Series.of(
                                        "",
                                        Look.WHOLE,
                                        seconds,
                                        readings.weightedPeakPercent(),
                                        decimals(speed.weightedPeak()))))
                .withHeight(HEIGHT)
                .withBands(worst(words, speed.worstTenSeconds()))
                .withLimits(limits.wowAndFlutter(time, percent));
    }

    /** Up to the limit, unless the readings lie so far below that they would be flat. */
    private static Axis percentAxis(Wording words, SpeedReadings readings, LimitLines limits) {
        double reading =
                Math.max(Arrays.stream(readings.weightedPeakPercent()).max().orElse(0), 1e-4);
        double limit = limits.highestWow().orElse(0);
        double high = limit < FLAT * reading ? Math.max(reading, limit) : reading;
        double step = Axis.niceStep(high / 3);
        return Axis.linear(
                words.say("speed.axis-weighted"), 0, step * Math.ceil(1.05 * high / step));
    }

    /** No reading is known better than the highest of them. */
    private static int decimals(Quantity peak) {
        return peak != null && peak.isKnown()
                ? Numbers.decimals(peak.uncertainty())
                : UNKNOWN_DECIMALS;
    }

    private static List<Chart.Band> worst(Wording words, WorstTenSeconds worst) {
        return worst == null
                ? List.of()
                : List.of(
                        new Chart.Band(
                                worst.fromSeconds(),
                                worst.fromSeconds() + WORST_S,
                                words.say("speed.worst-band")));
    }

    /** The reading over time in some thirty rows. */
    static DataTable table(Wording words, Speed speed) {
        List<List<String>> rows = new ArrayList<>();
        if (isThere(speed)) {
            double[] seconds = speed.readings().seconds();
            double[] percent = speed.readings().weightedPeakPercent();
            int join = (seconds.length + TABLE_ROWS - 1) / TABLE_ROWS;
            for (int i = 0; i < seconds.length; i += join) {
                int end = Math.min(seconds.length, i + join);
                double highest = Arrays.stream(percent, i, end).max().orElseThrow();
                rows.add(
                        List.of(
                                words.decimal((seconds[i] + seconds[end - 1]) / 2, 1),
                                words.decimal(highest, 4)));
            }
        }
        return new DataTable(
                words.say("speed.readings-table"),
                List.of(
                        words.say("speed.column-middle"),
                        words.say("speed.column-highest-weighted")),
                rows);
    }
}
