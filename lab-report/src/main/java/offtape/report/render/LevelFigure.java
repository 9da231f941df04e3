package offtape.report.render;

import java.util.Arrays;
import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.headline.Find;
import offtape.report.result.LevelDependence;
import offtape.report.result.Response;
import offtape.report.result.Results;

/** What a louder sweep loses against a quiet one. */
final class LevelFigure {

    private static final int HEIGHT = 260;

    private LevelFigure() {}

    /** The figure and its table; nothing if the sweeps had one level only. */
    static Markup of(Results results, Axis frequencies) {
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
        return Section.figure(caption, List.of(chart))
                .add(table(loud).open())
                .add(ChartTable.of(chart).folded());
    }

    private static Chart chart(List<Response> loud, String caption, Axis frequencies) {
        double low =
                loud.stream()
                        .flatMapToDouble(r -> Arrays.stream(r.levelDependence().differenceDb()))
                        .filter(Double::isFinite)
                        .min()
                        .orElse(0);
        double loudest = loud.stream().mapToDouble(Response::levelDb).max().orElseThrow();
        return Chart.of(
                        "level-chart",
                        "Response of the louder sweep less that of the quiet one",
                        caption,
                        frequencies,
                        Axis.linear(
                                "Loud less quiet, dB", Math.max(-20, Math.min(-2, low - 1)), 1.5),
                        loud.stream().map(r -> series(r, r.levelDb() != loudest)).toList())
                .withHeight(HEIGHT)
                .withRules(List.of(new Chart.Rule(-1, "−1 dB")));
    }

    private static Series series(Response r, boolean second) {
        LevelDependence d = r.levelDependence();
        return Series.within(
                ResponseSection.label(r),
                Look.of(r.channel(), second),
                d.frequencyHz(),
                d.differenceDb(),
                d.uncertaintyDb(),
                ResponseSection.MOST_DECIMALS);
    }

    private static String caption(List<Response> loud) {
        List<String> parts =
                loud.stream()
                        .filter(r -> Find.figure(r.levelDependence().lossAt10kHz()).isKnown())
                        .map(LevelFigure::told)
                        .toList();
        String reading = "A line that falls says that loud highs come back weaker than quiet ones.";
        return parts.isEmpty() ? reading : reading + " At 10 kHz " + Words.list(parts) + ".";
    }

    private static String told(Response r) {
        return "the "
                + r.channel()
                + " channel loses "
                + Numbers.value(r.levelDependence().lossAt10kHz(), false)
                + " from "
                + ResponseSection.shortLevel(r.levelDependence().quietLevelDb())
                + " to "
                + ResponseSection.shortLevel(r.levelDb());
    }

    private static DataTable table(List<Response> loud) {
        return new DataTable(
                "What the louder sweep loses",
                List.of("Channel, sweep level", "Against", "At 10 kHz", "1 dB lost from"),
                loud.stream().map(LevelFigure::row).toList());
    }

    private static List<String> row(Response r) {
        LevelDependence d = r.levelDependence();
        Quantity from = Find.figure(d.oneDbLossFrom());
        return List.of(
                ResponseSection.who(r),
                ResponseSection.shortLevel(d.quietLevelDb()),
                Numbers.full(Find.figure(d.lossAt10kHz()), false),
                from.isKnown() ? Numbers.full(from, false) : from.reason());
    }
}
