package offtape.cli.command;

import java.nio.file.Path;
import java.util.List;
import java.util.function.Function;
import offtape.cli.terminal.Terminal;
import offtape.core.unit.Quantity;
import offtape.report.judge.DecisionWords;
import offtape.report.result.Response;
import offtape.report.result.Results;

/** What the demo found, in a few lines. */
final class DemoWords {

    private final Speech speech;

    /** The words spoken on a terminal. */
    DemoWords(Terminal terminal) {
        this.speech = Speech.of(terminal);
    }

    List<String> lines(Demo.Outcome o) {
        return List.of(
                line(o, "demo.speed", speech::signed, r -> r.speed().deviation()),
                line(o, "demo.flutter", speech::text, r -> r.speed().weightedPeak()),
                line(o, "demo.highs", speech::text, DemoWords::upperEdge),
                line(o, "demo.balance", speech::signed, r -> r.channels().balance()),
                line(o, "demo.noise", speech::text, r -> r.noise().get(0).aWeighted()),
                speech.say(
                        "demo.decision-before",
                        speech.told(DecisionWords.of(o.before().verdict()))),
                speech.say(
                        "demo.decision-after", speech.told(DecisionWords.of(o.after().verdict()))));
    }

    /** Where to look further. */
    List<String> next(Path out) {
        return List.of(
                speech.say("demo.open", out.resolve(Demo.COMPARISON)),
                speech.say(
                        "demo.reports",
                        out.resolve(Demo.BEFORE).resolve("report.html"),
                        out.resolve(Demo.AFTER).resolve("report.html")),
                speech.say("demo.work", out.resolve(Demo.AFTER)));
    }

    private static Quantity upperEdge(Results results) {
        return results.response().stream()
                .filter(r -> r.channel().equals("left"))
                .min((a, b) -> Double.compare(a.levelDb(), b.levelDb()))
                .map(Response::upperEdge)
                .orElse(Quantity.unknown("There is no response."));
    }

    private String line(
            Demo.Outcome o,
            String what,
            Function<Quantity, String> words,
            Function<Results, Quantity> figure) {
        return speech.say(
                "demo.line",
                speech.say(what),
                words.apply(figure.apply(o.before())),
                words.apply(figure.apply(o.after())));
    }
}
