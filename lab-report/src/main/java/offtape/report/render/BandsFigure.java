package offtape.report.render;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.headline.Find;
import offtape.report.result.Response;
import offtape.report.result.ResponseBand;
import offtape.report.result.Results;

/**
 * The widest bands around 1 kHz within which the response stays, as bars and as a table.
 *
 * @param words of the reader's language
 */
record BandsFigure(Wording words) {

    private static final int HEIGHT = 250;

    /** The bars of the quietest sweep, on the frequencies of the response chart. */
    Chart chart(Results results, Axis frequencies) {
        List<Response> quiet = quiet(results);
        int rows = quiet.stream().mapToInt(r -> r.bands().size()).sum();
        return Chart.of(
                        "bands-chart",
                        words.say("response.bands-title"),
                        caption(results),
                        frequencies,
                        Axis.rows(words.say("response.axis-within"), rows, ticks(quiet)),
                        bars(quiet))
                .withHeight(HEIGHT)
                .withTold(told(quiet));
    }

    /** Both ends of each bar under its full name. */
    private List<Series> told(List<Response> quiet) {
        List<Series> told = new ArrayList<>();
        for (int c = 0; c < quiet.size(); c++) {
            Response r = quiet.get(c);
            for (int b = 0; b < r.bands().size(); b++) {
                String within = words.significant(r.bands().get(b).toleranceDb(), 2);
                String name =
                        words.say(
                                "response.bar",
                                new ResponseWords(words).channel(r),
                                Numbers.withUnit(within, "dB"));
                told.add(bar(name, r, r.bands().get(b), row(quiet, c, b)));
            }
        }
        return told;
    }

    private static Series bar(String label, Response r, ResponseBand band, double row) {
        return Series.of(
                label,
                Look.of(r.channel(), false),
                new double[] {band.fromHz(), band.toHz()},
                new double[] {row, row},
                0);
    }

    /** Whether there is a bar to be drawn. */
    static boolean hasContent(Results results) {
        return quiet(results).stream().anyMatch(r -> !r.bands().isEmpty());
    }

    /** What the bars say. */
    String caption(Results results) {
        List<String> parts = new ArrayList<>();
        for (Response r : quiet(results)) {
            for (ResponseBand band : r.bands()) {
                if (band.toleranceDb() == 1) {
                    parts.add(
                            words.say(
                                    "response.bands-within",
                                    words.frequency(band.fromHz()),
                                    words.frequency(band.toHz()),
                                    words.channel(r.channel())));
                }
            }
        }
        String bars = words.say("response.bands-reading");
        return parts.isEmpty()
                ? bars
                : bars + " " + words.say("response.bands-stay", words.list(parts));
    }

    private static List<Response> quiet(Results results) {
        return Find.CHANNELS.stream()
                .flatMap(c -> Find.quietResponse(results, c).stream())
                .toList();
    }

    /** A row a band: the narrow tolerances below, the channels side by side. */
    private static double row(List<Response> quiet, int channel, int band) {
        return 1 + quiet.size() * band + (quiet.size() - 1 - channel);
    }

    private List<Tick> ticks(List<Response> quiet) {
        List<Tick> ticks = new ArrayList<>();
        for (int c = 0; c < quiet.size(); c++) {
            String initial = new ResponseWords(words).initial(quiet.get(c));
            for (int b = 0; b < quiet.get(c).bands().size(); b++) {
                double tolerance = quiet.get(c).bands().get(b).toleranceDb();
                ticks.add(
                        new Tick(
                                row(quiet, c, b),
                                initial + " ±" + words.significant(tolerance, 2)));
            }
        }
        ticks.sort(Comparator.comparingDouble(Tick::value));
        return ticks;
    }

    private static List<Series> bars(List<Response> quiet) {
        List<Series> bars = new ArrayList<>();
        for (int c = 0; c < quiet.size(); c++) {
            for (int b = 0; b < quiet.get(c).bands().size(); b++) {
                ResponseBand band = quiet.get(c).bands().get(b);
                bars.add(bar("", quiet.get(c), band, row(quiet, c, b)));
            }
        }
        return bars;
    }

    /** Both ends of each band with their uncertainty. */
    DataTable table(Results results) {
        List<List<String>> rows =
                results.response().stream()
                        .flatMap(r -> r.bands().stream().map(b -> row(r, b)))
                        .toList();
        return new DataTable(
                words.say("response.bands-table"),
                List.of(
                        words.say("response.head-who"),
                        words.say("response.head-within"),
                        words.say("response.head-from"),
                        words.say("response.head-to")),
                rows);
    }

    private List<String> row(Response r, ResponseBand band) {
        return List.of(
                new ResponseWords(words).who(r),
                Numbers.withUnit("±" + words.significant(band.toleranceDb(), 2), "dB"),
                end(band.lowerEnd(), band.fromHz(), "response.or-lower"),
                end(band.upperEnd(), band.toHz(), "response.or-higher"));
    }

    private String end(Quantity end, double hz, String beyond) {
        Quantity figure = Find.figure(end);
        return figure.isKnown()
                ? words.full(figure, false)
                : words.say(beyond, words.frequency(hz));
    }
}
