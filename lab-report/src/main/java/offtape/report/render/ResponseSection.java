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

/**
 * How evenly tones of different pitch come back.
 *
 * @param words of the reader's language
 */
record ResponseSection(Wording words) {

    /** Hundredths of a decibel are the finest that is of use. */
    static final int MOST_DECIMALS = 2;

    private static final double EDGE_DB = -3;

    /** The section. */
    Section of(Results results, LimitLines limits) {
        Markup body = Section.paragraph(words, words.say("response.intro"));
        List<Response> curves =
                results.response().stream().filter(r -> r.frequencyHz().length > 0).toList();
        if (curves.isEmpty()) {
            body.add(Section.paragraph(words, words.say("response.no-sweep")));
        } else {
            String caption = caption(results) + limits.responseWords(levelAxis(words, curves));
            body.add(
                    Section.figure(
                            words, caption, List.of(chart(results, curves, limits, caption))));
            if (BandsFigure.hasContent(results)) {
                BandsFigure bands = new BandsFigure(words);
                body.add(
                        Section.figure(
                                words,
                                bands.caption(results),
                                List.of(bands.chart(results, frequencyAxis(words, curves)))));
            }
        }
        if (!results.response().isEmpty()) {
            body.add(edges(results).open());
            body.add(new BandsFigure(words).table(results).folded(words));
            body.add(new ContourTable(words).of(results).folded(words));
            body.add(new LevelFigure(words).of(results, frequencyAxis(words, curves)));
        }
        body.add(ResponseTable.of(words, results).folded(words));
        return new Section("response", words.say("response.heading"), body);
    }

    private Chart chart(Results results, List<Response> curves, LimitLines limits, String caption) {
        double quiet = Find.sweepLevels(results).get(0);
        ResponseWords names = new ResponseWords(words);
        Stream<Series> machine =
                curves.stream()
                        .map(
                                r ->
                                        series(
                                                r,
                                                names.label(r),
                                                Look.of(r.channel(), r.levelDb() != quiet)));
        List<Series> series = Stream.concat(machine, ownOfInterface(results)).toList();
        return Chart.of(
                        "response-chart",
                        words.say("response.title"),
                        caption,
                        frequencyAxis(words, curves),
                        levelAxis(words, curves),
                        series)
                .withRules(List.of(new Chart.Rule(EDGE_DB, "−3 dB")))
                .withLimits(limits.response(levelAxis(words, curves)))
                .withMarks(
                        curves.stream()
                                .filter(r -> r.levelDb() == quiet)
                                .flatMap(
                                        r ->
                                                Stream.concat(
                                                        edgeMarks(r),
                                                        new ContourTable(words).marks(r)))
                                .toList());
    }

    /** A response under a label. */
    static Series series(Response r, String label, Look look) {
        return Series.within(
                label, look, r.frequencyHz(), r.magnitudeDb(), r.uncertaintyDb(), MOST_DECIMALS);
    }

    /** The first of the interface's own curves; the other is like it as a rule. */
    private Stream<Series> ownOfInterface(Results results) {
        return results.interfaceShare() == null
                ? Stream.empty()
                : results.interfaceShare().responses().stream()
                        .limit(1)
                        .map(
                                c ->
                                        Series.of(
                                                words.say(
                                                        "response.interface",
                                                        words.channel(c.channel())),
                                                Look.WHOLE,
                                                c.frequencyHz(),
                                                c.magnitudeDb(),
                                                MOST_DECIMALS));
    }

    /** Audio frequencies, and what the curves hold beyond them. */
    static Axis frequencyAxis(Wording words, List<Response> curves) {
        double low = frequencies(curves).filter(f -> f > 0).min().orElse(20);
        double high = frequencies(curves).max().orElse(20_000);
        return Axis.audioFrequency(
                words, Math.max(10, Math.min(20, low)), Math.min(48_000, Math.max(20_000, high)));
    }

    /** From the lowest to the highest level that is worth showing, in steps of 5 dB. */
    static Axis levelAxis(Wording words, List<Response> curves) {
        double low = levels(curves).min().orElse(0);
        double high = levels(curves).max().orElse(0);
        return Axis.linear(
                words.say("response.axis-level"),
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

    private Stream<Chart.Mark> edgeMarks(Response response) {
        String initial = new ResponseWords(words).initial(response);
        return Stream.of(response.lowerEdge(), response.upperEdge())
                .map(Find::figure)
                .filter(Quantity::isKnown)
                .map(
                        edge ->
                                new Chart.Mark(
                                        edge.value(),
                                        EDGE_DB,
                                        0,
                                        initial + " " + words.frequency(edge.value()),
                                        Look.of(response.channel(), false),
                                        false));
    }

    private String caption(Results results) {
        List<String> sentences = new ArrayList<>();
        for (double level : Find.sweepLevels(results)) {
            List<String> parts =
                    Find.CHANNELS.stream()
                            .flatMap(c -> Find.response(results, c, level).stream())
                            .map(this::band)
                            .toList();
            sentences.add(
                    words.say(
                            "response.at-level",
                            new ResponseWords(words).level(level),
                            words.list(parts)));
        }
        return String.join(" ", sentences);
    }

    private String band(Response response) {
        Quantity lower = Find.figure(response.lowerEdge());
        Quantity upper = Find.figure(response.upperEdge());
        String channel = words.channel(response.channel());
        if (lower.isKnown() && upper.isKnown()) {
            return words.say(
                    "response.keeps",
                    channel,
                    words.frequency(lower.value()),
                    words.frequency(upper.value()));
        }
        if (upper.isKnown()) {
            return words.say("response.keeps-up-to", channel, words.frequency(upper.value()));
        }
        return lower.isKnown()
                ? words.say("response.keeps-down-to", channel, words.frequency(lower.value()))
                : words.say("response.no-edges", channel);
    }

    private DataTable edges(Results results) {
        List<List<String>> rows =
                results.response().stream()
                        .map(
                                r ->
                                        List.of(
                                                new ResponseWords(words).who(r),
                                                words.full(Find.figure(r.lowerEdge()), false),
                                                words.full(Find.figure(r.upperEdge()), false),
                                                words.full(Find.figure(r.ripple()), false),
                                                rippleBand(r)))
                        .toList();
        return new DataTable(
                words.say("response.edges"),
                List.of(
                        words.say("response.head-who"),
                        words.say("response.head-lower-edge"),
                        words.say("response.head-upper-edge"),
                        words.say("response.head-ripple"),
                        words.say("response.head-ripple-band")),
                rows);
    }

    private String rippleBand(Response r) {
        return Find.figure(r.ripple()).isKnown()
                ? words.say(
                        "response.from-to",
                        words.frequency(r.rippleFromHz()),
                        words.frequency(r.rippleToHz()))
                : DataTable.NOTHING;
    }
}
