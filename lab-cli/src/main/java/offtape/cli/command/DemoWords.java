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
                line(o, "Speed", Figures::signed, r -> r.speed().deviation()),
                line(
                        o,
                        "Wow and flutter, weighted peak",
                        Figures::text,
                        r -> r.speed().weightedPeak()),
                line(o, "Highs, left, -3 dB at", Figures::text, DemoWords::upperEdge),
                line(
                        o,
                        "Balance, right against left",
                        Figures::signed,
                        r -> r.channels().balance()),
                line(
                        o,
                        "Noise, left, A-weighted",
                        Figures::text,
                        r -> r.noise().get(0).aWeighted()),
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
            Demo.Outcome o,
            String what,
            Function<Quantity, String> words,
            Function<Results, Quantity> figure) {
        return String.format(
                Locale.ROOT,
                "%-31s %12s as bought, %12s after service",
                what,
                words.apply(figure.apply(o.before())),
                words.apply(figure.apply(o.after())));
    }
}
