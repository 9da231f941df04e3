package offtape.report.render;

import java.util.Arrays;
import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.headline.Find;
import offtape.report.result.LevelDependence;
import offtape.report.result.Response;
import offtape.report.result.Results;

/**
 * What a louder sweep loses against a quiet one.
 *
 * @param words of the reader's language
 */
record LevelFigure(Wording words) {

    private static final int HEIGHT = 260;

    /** The figure and its table; nothing if the sweeps had one level only. */
    Markup of(Results results, Axis frequencies) {
        List<Response> loud =
                results.response().stream()
                        .filter(r -> r.levelDependence() != null)
                        .filter(r -> r.levelDependence().frequencyHz().length > 0)
                        .toList();
        if (loud.isEmpty()) {
            return new Markup();
        }
        String caption = caption(loud);
        Chart chart = chart(loud, caption, frequencies);
        return Section.figure(words, caption, List.of(chart))
                .add(table(loud).open())
                .add(ChartTable.of(words, chart).folded(words));
    }

    private Chart chart(List<Response> loud, String caption, Axis frequencies) {
        double low =
                loud.stream()
                        .flatMapToDouble(r -> Arrays.stream(r.levelDependence().differenceDb()))
                        .filter(Double::isFinite)
                        .min()
                        .orElse(0);
        double loudest = loud.stream().mapToDouble(Response::levelDb).max().orElseThrow();
        return Chart.of(
                        "level-chart",
                        words.say("response.level-title"),
                        caption,
                        frequencies,
                        Axis.linear(
                                words.say("response.axis-loud-less-quiet"),
                                Math.max(-20, Math.min(-2, low - 1)),
                                1.5),
                        loud.stream().map(r -> series(r, r.levelDb() != loudest)).toList())
                .withHeight(HEIGHT)
                .withRules(List.of(new Chart.Rule(-1, "−1 dB")));
    }

    private Series series(Response r, boolean second) {
        LevelDependence d = r.levelDependence();
        return Series.within(
                new ResponseWords(words).label(r),
                Look.of(r.channel(), second),
                d.frequencyHz(),
                d.differenceDb(),
                d.uncertaintyDb(),
                ResponseSection.MOST_DECIMALS);
    }

    private String caption(List<Response> loud) {
        List<String> parts =
                loud.stream()
                        .filter(r -> Find.figure(r.levelDependence().lossAt10kHz()).isKnown())
                        .map(this::told)
                        .toList();
        String reading = words.say("response.level-reading");
        return parts.isEmpty()
                ? reading
                : reading + " " + words.say("response.level-losses", words.list(parts));
    }

    private String told(Response r) {
        ResponseWords names = new ResponseWords(words);
        return words.say(
                "response.level-loss",
                words.channel(r.channel()),
                words.value(r.levelDependence().lossAt10kHz(), false),
                names.level(r.levelDependence().quietLevelDb()),
                names.level(r.levelDb()));
    }

    private DataTable table(List<Response> loud) {
        return new DataTable(
                words.say("response.level-table"),
                List.of(
                        words.say("response.head-who"),
                        words.say("response.head-against"),
                        words.say("response.head-at-10-khz"),
                        words.say("response.head-lost-from")),
                loud.stream().map(this::row).toList());
    }

    private List<String> row(Response r) {
        LevelDependence d = r.levelDependence();
        Quantity from = Find.figure(d.oneDbLossFrom());
        ResponseWords names = new ResponseWords(words);
        return List.of(
                names.who(r),
                names.level(d.quietLevelDb()),
                words.full(Find.figure(d.lossAt10kHz()), false),
                from.isKnown() ? words.full(from, false) : words.told(from.reason()));
    }
}
