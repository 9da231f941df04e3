package offtape.report.render;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.stream.Stream;
import offtape.core.unit.Quantity;
import offtape.report.result.Distortion;
import offtape.report.result.Response;
import offtape.report.result.Results;

/**
 * Two sessions side by side: headline figures with their difference, curves on top of each other.
 */
final class PairPage {

    private PairPage() {}

    /** The page. */
    static String of(Results before, Results after) {
        String machine = Words.machine(after.session());
        Markup opening =
                new Markup()
                        .open("header")
                        .line()
                        .element("p", "Two measurements side by side", "class", "sheet")
                        .line()
                        .element("h1", machine + ": before and after")
                        .line()
                        .element("p", session("Before", before), "class", "identity")
                        .line()
                        .element("p", session("After", after), "class", "identity")
                        .line()
                        .element("p", finding(before, after), "class", "findings")
                        .close("header")
                        .line()
                        .add(table(before, after).open());
        return Page.of(
                machine + " – before and after – Offtape report",
                opening,
                List.of(response(before, after), distortion(before, after)),
                List.of(before.session(), after.session()));
    }

    private static String session(String which, Results results) {
        return which
                + ": "
                + Words.machine(results.session())
                + ", "
                + Words.moment(results.session().madeAt())
                + ". "
                + Words.description(results.session());
    }

    private static String finding(Results before, Results after) {
        List<Change> changes = changes(before, after);
        long clear = changes.stream().filter(Change::isClear).count();
        long known = changes.stream().filter(Change::isKnown).count();
        if (known == 0) {
            return "No headline figure is known in both sessions.";
        }
        return clear
                + " of the "
                + known
                + " headline figures known in both sessions changed by more than the uncertainty of"
                + " the difference.";
    }

    private static List<Change> changes(Results before, Results after) {
        List<Headline> first = Headline.of(before);
        List<Headline> second = Headline.of(after);
        List<Change> changes = new ArrayList<>();
        for (int i = 0; i < first.size(); i++) {
            Headline headline = first.get(i);
            for (int c = 0; c < headline.figures().size(); c++) {
                String channel = headline.isPerChannel() ? ", " + Find.CHANNELS.get(c) : "";
                changes.add(
                        new Change(
                                headline.name() + channel,
                                headline.signed(),
                                headline.figures().get(c),
                                second.get(i).figures().get(c)));
            }
        }
        return changes;
    }

    private static DataTable table(Results before, Results after) {
        return new DataTable(
                "Headline figures of both sessions",
                List.of("Figure", "Before", "After", "Difference"),
                changes(before, after).stream()
                        .map(
                                c ->
                                        List.of(
                                                c.name(),
                                                Numbers.full(c.before(), c.signed()),
                                                Numbers.full(c.after(), c.signed()),
                                                c.words()))
                        .toList());
    }

    private static Section response(Results before, Results after) {
        List<Series> series =
                overlaid(
                        before,
                        after,
                        Find::quietResponse,
                        (r, when) ->
                                new Series(
                                        label(r.channel(), when),
                                        Look.of(r.channel(), when == When.BEFORE),
                                        r.frequencyHz(),
                                        r.magnitudeDb()));
        List<Response> curves =
                Stream.of(before, after)
                        .flatMap(s -> Find.CHANNELS.stream().map(c -> Find.quietResponse(s, c)))
                        .flatMap(Optional::stream)
                        .filter(r -> r.frequencyHz().length > 0)
                        .toList();
        if (curves.isEmpty()) {
            return new Section(
                    "response",
                    "Frequency response",
                    Section.paragraph("Neither session holds a sweep."));
        }
        String caption =
                "The response of both sessions at their lowest sweep level; the line at −3 dB marks"
                        + " the edges. "
                        + moved(before, after, Headline.UPPER_EDGE);
        Chart chart =
                Chart.of(
                                "response-pair",
                                "Frequency response before and after",
                                caption,
                                ResponseSection.frequencyAxis(curves),
                                ResponseSection.levelAxis(curves),
                                series)
                        .withRules(List.of(new Chart.Rule(-3, "−3 dB")));
        return new Section(
                "response", "Frequency response", Section.figure(caption, List.of(chart)));
    }

    private static Section distortion(Results before, Results after) {
        List<Series> series =
                overlaid(
                        before,
                        after,
                        Find::toneLadder,
                        (d, when) ->
                                DistortionCharts.k3Series(
                                        d, label(d.channel(), when), when == When.BEFORE));
        List<Distortion> ladders =
                Stream.of(before, after)
                        .flatMap(s -> DistortionCharts.toneLadders(s).stream())
                        .filter(DistortionCharts::hasSteps)
                        .toList();
        if (ladders.isEmpty()) {
            return new Section(
                    "distortion",
                    "Distortion and level",
                    Section.paragraph("Neither session holds a ladder of tones."));
        }
        String caption =
                "The third harmonic against record level; further right is louder before the tape"
                        + " distorts. "
                        + moved(before, after, Headline.LEVEL_AT_K3);
        Chart chart =
                Chart.of(
                                "k3-pair",
                                "Third harmonic (K3) before and after",
                                caption,
                                DistortionCharts.recordAxis(ladders),
                                DistortionCharts.k3Axis(ladders),
                                series)
                        .withRules(DistortionCharts.k3Rules());
        return new Section(
                "distortion", "Distortion and level", Section.figure(caption, List.of(chart)));
    }

    private enum When {
        BEFORE,
        AFTER
    }

    private static String label(String channel, When when) {
        return Words.sentence(channel) + (when == When.BEFORE ? " before" : " after");
    }

    private static <T> List<Series> overlaid(
            Results before,
            Results after,
            BiFunction<Results, String, Optional<T>> find,
            BiFunction<T, When, Series> series) {
        return Stream.of(When.values())
                .flatMap(
                        when ->
                                Find.CHANNELS.stream()
                                        .map(
                                                c ->
                                                        find.apply(
                                                                when == When.BEFORE
                                                                        ? before
                                                                        : after,
                                                                c))
                                        .flatMap(Optional::stream)
                                        .map(t -> series.apply(t, when)))
                .toList();
    }

    /** How one headline figure moved, channel by channel. */
    private static String moved(Results before, Results after, String name) {
        Headline first = Headline.named(before, name);
        Headline second = Headline.named(after, name);
        List<String> parts = new ArrayList<>();
        for (int c = 0; c < first.figures().size(); c++) {
            Quantity from = first.figures().get(c);
            Quantity to = second.figures().get(c);
            if (from.isKnown() && to.isKnown()) {
                parts.add(
                        "from "
                                + Numbers.value(from, first.signed())
                                + " to "
                                + Numbers.value(to, first.signed())
                                + " on the "
                                + Find.CHANNELS.get(c)
                                + " channel");
            }
        }
        return parts.isEmpty() ? "" : name + ": " + Words.list(parts) + ".";
    }
}
