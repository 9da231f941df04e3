package offtape.cli.command;

import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import offtape.core.unit.Quantity;
import offtape.report.judge.DecisionWords;
import offtape.report.result.Response;
import offtape.report.result.Results;

/** What the demo found, in a few lines. */
final class DemoWords {

    private DemoWords() {}

    static List<String> lines(Demo.Outcome o) {
        return List.of(
                line(o, "Speed", "%+.2f %%", r -> r.speed().deviation()),
                line(o, "Wow and flutter, weighted peak", "%.3f %%", r -> r.speed().weightedPeak()),
                line(o, "Highs, left, -3 dB at", "%.0f Hz", DemoWords::upperEdge),
                line(o, "Balance, right against left", "%+.2f dB", r -> r.channels().balance()),
                line(o, "Noise, left, A-weighted", "%.1f dB", r -> r.noise().get(0).aWeighted()),
                "Decision as bought:     " + DecisionWords.of(o.before().verdict()),
                "Decision after service: " + DecisionWords.of(o.after().verdict()));
    }

    private static Quantity upperEdge(Results results) {
        return results.response().stream()
                .filter(r -> r.channel().equals("left"))
                .min((a, b) -> Double.compare(a.levelDb(), b.levelDb()))
                .map(Response::upperEdge)
                .orElse(Quantity.unknown("There is no response."));
    }

    private static String line(
            Demo.Outcome o, String what, String format, Function<Results, Quantity> figure) {
        return String.format(
                Locale.ROOT,
                "%-31s %12s as bought, %12s after service",
                what,
                Figures.text(format, figure.apply(o.before())),
                Figures.text(format, figure.apply(o.after())));
    }
}
