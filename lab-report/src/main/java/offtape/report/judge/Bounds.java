package offtape.report.judge;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import offtape.report.headline.Find;
import offtape.report.result.Response;
import offtape.report.result.Results;

/**
 * A limit in numbers, for whoever draws it.
 *
 * @param quantity key of the figure, as a set of limits names it
 * @param fromHz of a response: where the band begins, else null
 * @param toHz of a response: where it ends, else null
 * @param low lowest value that meets it, in the unit of the figure, or null
 * @param high highest value that meets it, or null
 * @param isPlaced whether only the width is limited and the place is ours
 */
public record Bounds(
        String quantity, Double fromHz, Double toHz, Double low, Double high, boolean isPlaced) {

    /** Key of the weighted peak of wow and flutter, %. */
    public static final String WOW_AND_FLUTTER = Judged.WOW_AND_FLUTTER.key();

    /** Key of the response, dB re 1 kHz. */
    public static final String RESPONSE = Judged.RESPONSE.key();

    /** Key of the record level at 3 % K3, dB. */
    public static final String LEVEL_AT_3_PERCENT = Judged.LEVEL_AT_3_PERCENT.key();

    /** Key of the crosstalk at 1 kHz, dB. */
    public static final String CROSSTALK = Judged.CROSSTALK.key();

    /** Key of the delay between the channels, µs. */
    public static final String INTERCHANNEL_DELAY = Judged.INTERCHANNEL_DELAY.key();

    /**
     * The limits of a set that count at the tape speed of a session. Of a band that may lie at any
     * level only its width is given; it is placed so that all channels that keep to it lie within.
     *
     * @param set or null for none
     */
    public static List<Bounds> of(LimitSet set, Results results) {
        return set == null
                ? List.of()
                : set.limits().stream()
                        .filter(l -> l.countsAt(results.session().tapeSpeedMmPerS()))
                        .map(l -> of(l, results))
                        .toList();
    }

    private static Bounds of(Limit limit, Results results) {
        if (limit.widthDb() != null) {
            double low = lowest(limit, results);
            return new Bounds(
                    limit.quantity(),
                    limit.fromHz(),
                    limit.toHz(),
                    low,
                    low + limit.widthDb(),
                    true);
        }
        boolean isResponse = limit.judged() == Judged.RESPONSE;
        return new Bounds(
                limit.quantity(),
                limit.fromHz(),
                limit.toHz(),
                isResponse ? limit.lowDb() : limit.least(),
                isResponse ? limit.highDb() : limit.most(),
                false);
    }

    /**
     * Where a band of levels lies lowest. A curve from a to b fits into a width w at b − w to a; of
     * what the curves that fit have in common the middle is taken. If none fits, or not all that do
     * fit one place, the band ends at the highest level, so that what has fallen out of it shows.
     */
    private static double lowest(Limit limit, Results results) {
        double from = Double.NEGATIVE_INFINITY;
        double to = Double.POSITIVE_INFINITY;
        double highest = Double.NEGATIVE_INFINITY;
        List<double[]> all = levels(limit, results);
        for (double[] levels : all) {
            double low = Arrays.stream(levels).min().orElseThrow();
            double high = Arrays.stream(levels).max().orElseThrow();
            highest = Math.max(highest, high);
            if (high - low <= limit.widthDb()) {
                from = Math.max(from, high - limit.widthDb());
                to = Math.min(to, low);
            }
        }
        boolean fits = Double.isFinite(from) && from <= to;
        double top = all.isEmpty() ? limit.widthDb() / 2 : highest;
        return fits ? (from + to) / 2 : top - limit.widthDb();
    }

    private static List<double[]> levels(Limit limit, Results results) {
        List<double[]> all = new ArrayList<>();
        for (String channel : Find.CHANNELS) {
            Find.quietResponse(results, channel)
                    .map(r -> levels(limit, r))
                    .filter(levels -> levels.length > 0)
                    .ifPresent(all::add);
        }
        return all;
    }

    private static double[] levels(Limit limit, Response r) {
        return IntStream.range(0, r.frequencyHz().length)
                .filter(i -> r.frequencyHz()[i] >= limit.fromHz())
                .filter(i -> r.frequencyHz()[i] <= limit.toHz())
                .mapToDouble(i -> r.magnitudeDb()[i])
                .filter(Double::isFinite)
                .toArray();
    }
}
