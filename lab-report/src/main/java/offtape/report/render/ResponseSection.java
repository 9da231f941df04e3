package offtape.report.render;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import offtape.core.unit.Quantity;
import offtape.report.headline.Find;
import offtape.report.result.Response;
import offtape.report.result.Results;

/** How evenly tones of different pitch come back. */
final class ResponseSection {

    /** Hundredths of a decibel are the finest that is of use. */
    static final int MOST_DECIMALS = 2;

    private static final double EDGE_DB = -3;

    private ResponseSection() {}

    /** The section. */
    static Section of(Results results, LimitLines limits) {
        Markup body =
                Section.paragraph(
                        "Does every tone come back as strong as it went in? The line would be flat"
                                + " if nothing were changed on the way; the edges are where it has"
                                + " fallen by 3 dB.");
        List<Response> curves =
                results.response().stream().filter(r -> r.frequencyHz().length > 0).toList();
        if (curves.isEmpty()) {
            body.add(Section.paragraph("No sweep was found in this recording."));
        } else {
            String caption = caption(results) + limits.responseWords(levelAxis(curves));
            body.add(Section.figure(caption, List.of(chart(results, curves, limits, caption))));
            if (BandsFigure.hasContent(results)) {
                body.add(
                        Section.figure(
                                BandsFigure.caption(results),
                                List.of(BandsFigure.chart(results, frequencyAxis(curves)))));
            }
        }
        if (!results.response().isEmpty()) {
            body.add(edges(results).open());
            body.add(BandsFigure.table(results).folded());
            body.add(ContourTable.of(results).folded());
            body.add(LevelFigure.of(results, frequencyAxis(curves)));
        }
        body.add(ResponseTable.of(results).folded());
        return new Section("response", "Frequency response", body);
    }

    private static Chart chart(
            Results results, List<Response> curves, LimitLines limits, String caption) {
        double quiet = Find.sweepLevels(results).get(0);
        Stream<Series> machine =
                curves.stream()
                        .map(r -> series(r, label(r), Look.of(r.channel(), r.levelDb() != quiet)));
        List<Series> series = Stream.concat(machine, ownOfInterface(results)).toList();
        return Chart.of(
                        "response-chart",
                        "Frequency response of both channels",
                        caption,
                        frequencyAxis(curves),
                        levelAxis(curves),
                        series)
                .withRules(List.of(new Chart.Rule(EDGE_DB, "−3 dB")))
                .withLimits(limits.response(levelAxis(curves)))
                .withMarks(
                        curves.stream()
                                .filter(r -> r.levelDb() == quiet)
                                .flatMap(r -> Stream.concat(edgeMarks(r), ContourTable.marks(r)))
                                .toList());
    }

    /** A response under a label. */
    static Series series(Response r, String label, Look look) {
        return Series.within(
                label, look, r.frequencyHz(), r.magnitudeDb(), r.uncertaintyDb(), MOST_DECIMALS);
    }

    /** The first of the interface's own curves; the other is like it as a rule. */
    private static Stream<Series> ownOfInterface(Results results) {
        return results.interfaceShare() == null
                ? Stream.empty()
                : results.interfaceShare().responses().stream()
                        .limit(1)
                        .map(
                                c ->
                                        Series.of(
                                                "Interface, " + c.channel(),
                                                Look.WHOLE,
                                                c.frequencyHz(),
                                                c.magnitudeDb(),
                                                MOST_DECIMALS));
    }

    /** Audio frequencies, and what the curves hold beyond them. */
    static Axis frequencyAxis(List<Response> curves) {
        double low = frequencies(curves).filter(f -> f > 0).min().orElse(20);
        double high = frequencies(curves).max().orElse(20_000);
        return Axis.audioFrequency(
                Math.max(10, Math.min(20, low)), Math.min(48_000, Math.max(20_000, high)));
    }

    /** From the lowest to the highest level that is worth showing, in steps of 5 dB. */
    static Axis levelAxis(List<Response> curves) {
        double low = levels(curves).min().orElse(0);
        double high = levels(curves).max().orElse(0);
        return Axis.linear(
                "Level, dB re 1 kHz",
                Math.max(-30, Math.min(-10, 5 * Math.floor(low / 5))),
                Math.min(20, Math.max(5, 5 * Math.ceil((high + 1) / 5))));
    }

    private static DoubleStream frequencies(List<Response> curves) {
        return curves.stream().flatMapToDouble(r -> Arrays.stream(r.frequencyHz()));
    }

    private static DoubleStream levels(List<Response> curves) {
        return curves.stream()
                .flatMapToDouble(r -> Arrays.stream(r.magnitudeDb()))
                .filter(Double::isFinite);
    }

    private static Stream<Chart.Mark> edgeMarks(Response response) {
        String initial = Words.sentence(response.channel()).substring(0, 1);
        return Stream.of(response.lowerEdge(), response.upperEdge())
                .map(Find::figure)
                .filter(Quantity::isKnown)
                .map(
                        edge ->
                                new Chart.Mark(
                                        edge.value(),
                                        EDGE_DB,
                                        0,
                                        initial + " " + Numbers.frequency(edge.value()),
                                        Look.of(response.channel(), false),
                                        false));
    }

    private static String caption(Results results) {
        List<String> sentences = new ArrayList<>();
        for (double level : Find.sweepLevels(results)) {
            List<String> parts =
                    Find.CHANNELS.stream()
                            .flatMap(c -> Find.response(results, c, level).stream())
                            .map(ResponseSection::band)
                            .toList();
            sentences.add("At " + shortLevel(level) + " " + Words.list(parts) + ".");
        }
        return String.join(" ", sentences);
    }

    private static String band(Response response) {
        Quantity lower = Find.figure(response.lowerEdge());
        Quantity upper = Find.figure(response.upperEdge());
        String who = "the " + response.channel() + " channel ";
        if (lower.isKnown() && upper.isKnown()) {
            return who
                    + "keeps within 3 dB from "
                    + Numbers.frequency(lower.value())
                    + " to "
                    + Numbers.frequency(upper.value());
        }
        if (upper.isKnown()) {
            return who + "keeps within 3 dB up to " + Numbers.frequency(upper.value());
        }
        if (lower.isKnown()) {
            return who + "keeps within 3 dB down to " + Numbers.frequency(lower.value());
        }
        return who + "has no edges that could be told";
    }

    private static DataTable edges(Results results) {
        List<List<String>> rows =
                results.response().stream()
                        .map(
                                r ->
                                        List.of(
                                                who(r),
                                                Numbers.full(Find.figure(r.lowerEdge()), false),
                                                Numbers.full(Find.figure(r.upperEdge()), false),
                                                Numbers.full(Find.figure(r.ripple()), false),
                                                rippleBand(r)))
                        .toList();
        return new DataTable(
                "Edges at −3 dB re 1 kHz, and ripple",
                List.of(
                        "Channel, sweep level",
                        "Lower edge",
                        "Upper edge",
                        "Ripple, ±",
                        "Ripple within"),
                rows);
    }

    private static String rippleBand(Response r) {
        return Find.figure(r.ripple()).isKnown()
                ? Numbers.frequency(r.rippleFromHz()) + " to " + Numbers.frequency(r.rippleToHz())
                : DataTable.NOTHING;
    }

    /** The direct label of a curve. */
    static String label(Response r) {
        return Words.sentence(r.channel()) + " at " + shortLevel(r.levelDb());
    }

    /** The head of a row. */
    static String who(Response r) {
        return Words.sentence(r.channel()) + ", " + shortLevel(r.levelDb());
    }

    /** A programme level: {@code −20 dB}, {@code 0 dB}. */
    static String shortLevel(double levelDb) {
        return Numbers.withUnit(Numbers.significant(levelDb, 3), "dB");
    }
}
