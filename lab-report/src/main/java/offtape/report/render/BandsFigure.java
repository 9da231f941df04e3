package offtape.report.render;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import offtape.core.unit.Quantity;
import offtape.report.result.Response;
import offtape.report.result.ResponseBand;
import offtape.report.result.Results;

/** The widest bands around 1 kHz within which the response stays, as bars and as a table. */
final class BandsFigure {

    private static final int HEIGHT = 210;

    /** How far the bars of the channels lie beside the tick of their tolerance. */
    private static final double ASIDE = 0.14;

    private BandsFigure() {}

    /** The bars of the quietest sweep, on the frequencies of the response chart. */
    static Chart chart(Results results, Axis frequencies) {
        List<Response> quiet = quiet(results);
        return Chart.of(
                        "bands-chart",
                        "Widest bands around 1 kHz",
                        caption(results),
                        frequencies,
                        new Axis("Within, dB", 0.4, 3.6, false, ticks()),
                        quiet.stream().flatMap(BandsFigure::bars).toList())
                .withHeight(HEIGHT);
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
        String bars = "The bars show how far from 1 kHz the quiet sweep stays within so many dB.";
        return parts.isEmpty() ? bars : bars + " Within 1 dB it stays " + Words.list(parts) + ".";
    }

    private static List<Response> quiet(Results results) {
        return Find.CHANNELS.stream()
                .flatMap(c -> Find.quietResponse(results, c).stream())
                .toList();
    }

    private static List<Tick> ticks() {
        return Stream.of(1, 2, 3).map(t -> new Tick(t, "±" + t)).toList();
    }

    private static Stream<Series> bars(Response r) {
        double aside = "left".equals(r.channel()) ? ASIDE : -ASIDE;
        return r.bands().stream()
                .map(
                        b ->
                                new Series(
                                        b.toleranceDb() == 1 ? Words.sentence(r.channel()) : "",
                                        Look.of(r.channel(), false),
                                        new double[] {b.fromHz(), b.toHz()},
                                        new double[] {
                                            b.toleranceDb() + aside, b.toleranceDb() + aside
                                        }));
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
