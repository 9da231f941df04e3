package offtape.report.render;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.headline.Find;
import offtape.report.result.Response;
import offtape.report.result.ResponseBand;
import offtape.report.result.Results;

/** The widest bands around 1 kHz within which the response stays, as bars and as a table. */
final class BandsFigure {

    private static final int HEIGHT = 250;

    private BandsFigure() {}

    /** The bars of the quietest sweep, on the frequencies of the response chart. */
    static Chart chart(Results results, Axis frequencies) {
        List<Response> quiet = quiet(results);
        int rows = quiet.stream().mapToInt(r -> r.bands().size()).sum();
        return Chart.of(
                        "bands-chart",
                        "Widest bands around 1 kHz",
                        caption(results),
                        frequencies,
                        Axis.rows("Within, dB", rows, ticks(quiet)),
                        bars(quiet))
                .withHeight(HEIGHT)
                .withTold(told(quiet));
    }

    /** Both ends of each bar under its full name. */
    private static List<Series> told(List<Response> quiet) {
        List<Series> told = new ArrayList<>();
        for (int c = 0; c < quiet.size(); c++) {
            Response r = quiet.get(c);
            for (int b = 0; b < r.bands().size(); b++) {
                String within = Numbers.significant(r.bands().get(b).toleranceDb(), 2);
                String name =
                        Words.sentence(r.channel()) + " within ±" + Numbers.withUnit(within, "dB");
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
    static String caption(Results results) {
        List<String> parts = new ArrayList<>();
        for (Response r : quiet(results)) {
            for (ResponseBand band : r.bands()) {
                if (band.toleranceDb() == 1) {
                    parts.add(
                            "from "
                                    + Numbers.frequency(band.fromHz())
                                    + " to "
                                    + Numbers.frequency(band.toHz())
                                    + " on the "
                                    + r.channel()
                                    + " channel");
                }
            }
        }
        String bars =
                "The bars show how far from 1 kHz the quiet sweep stays within so many dB, left (L)"
                        + " and right (R).";
        return parts.isEmpty() ? bars : bars + " Within 1 dB it stays " + Words.list(parts) + ".";
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

    private static List<Tick> ticks(List<Response> quiet) {
        List<Tick> ticks = new ArrayList<>();
        for (int c = 0; c < quiet.size(); c++) {
            String initial = Words.sentence(quiet.get(c).channel()).substring(0, 1);
            for (int b = 0; b < quiet.get(c).bands().size(); b++) {
                double tolerance = quiet.get(c).bands().get(b).toleranceDb();
                ticks.add(
                        new Tick(
                                row(quiet, c, b),
                                initial + " ±" + Numbers.significant(tolerance, 2)));
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
    static DataTable table(Results results) {
        List<List<String>> rows =
                results.response().stream()
                        .flatMap(r -> r.bands().stream().map(b -> row(r, b)))
                        .toList();
        return new DataTable(
                "widest bands around 1 kHz",
                List.of("Channel, sweep level", "Within", "From", "To"),
                rows);
    }

    private static List<String> row(Response r, ResponseBand band) {
        return List.of(
                ResponseSection.who(r),
                Numbers.withUnit("±" + Numbers.significant(band.toleranceDb(), 2), "dB"),
                end(band.lowerEnd(), band.fromHz(), "or lower"),
                end(band.upperEnd(), band.toHz(), "or higher"));
    }

    private static String end(Quantity end, double hz, String beyond) {
        Quantity figure = Find.figure(end);
        return figure.isKnown()
                ? Numbers.full(figure, false)
                : Numbers.frequency(hz) + " " + beyond + " (end of the sweep)";
    }
}
