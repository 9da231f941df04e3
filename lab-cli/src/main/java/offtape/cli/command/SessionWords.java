package offtape.cli.command;

import java.util.ArrayList;
import java.util.List;
import offtape.cli.terminal.Terminal;
import offtape.core.unit.Quantity;
import offtape.report.result.Distortion;
import offtape.report.result.HealthNote;
import offtape.report.result.Noise;
import offtape.report.result.Response;
import offtape.report.result.Results;
import offtape.report.result.TransportSpeed;

/** The headline figures of a session as lines for the terminal. */
final class SessionWords {

    private final Speech speech;

    /** The words spoken on a terminal. */
    SessionWords(Terminal terminal) {
        this.speech = Speech.of(terminal);
    }

    List<String> lines(Results results) {
        List<String> lines = new ArrayList<>();
        if (results.interfaceFigures() == null) {
            lines.add(
                    speech.say(
                            "session.speed",
                            speech.signed(results.speed().deviation()),
                            peak(results.speed().weightedPeak())));
        } else {
            lines.add(speech.say("session.delay", speech.text(results.interfaceFigures().delay())));
        }
        TransportSpeed own = results.speed().transport();
        if (own != null) {
            lines.add(speech.say("session.transport", peak(own.weightedPeak())));
        }
        if (results.timing().headDelay().isKnown()) {
            lines.add(
                    speech.say(
                            "session.heads",
                            speech.text(results.timing().headDelay()),
                            speech.text(results.timing().headSpacing())));
        }
        lines.addAll(new PassWords(speech).lines(results.speed().passes()));
        lowestLevel(results)
                .forEach(r -> lines.add(line("session.response", r.channel(), edges(r))));
        for (Distortion d : results.distortion()) {
            if (d.levelAtK3ThreePercent().isKnown()) {
                lines.add(
                        line("session.k3", d.channel(), speech.signed(d.levelAtK3ThreePercent())));
            }
        }
        for (Noise n : results.noise()) {
            lines.add(line("session.noise", n.channel(), weighted(n.aWeighted())));
        }
        for (HealthNote n : results.health()) {
            if (!n.severity().equals("note")) {
                lines.add(speech.say("session.mind", speech.told(n.message())));
            }
        }
        lines.addAll(new VerdictLines(speech).of(results));
        return lines;
    }

    private String peak(Quantity q) {
        return q.isKnown() ? speech.say("session.weighted-peak", speech.text(q)) : speech.text(q);
    }

    private String weighted(Quantity q) {
        return q.isKnown() ? speech.say("session.a-weighted", speech.text(q)) : speech.text(q);
    }

    private String edge(Quantity hz) {
        return hz.isKnown() ? speech.value(hz) : speech.text(hz);
    }

    private String edges(Response response) {
        boolean neither = !response.lowerEdge().isKnown() && !response.upperEdge().isKnown();
        return neither
                ? speech.told(response.upperEdge().reason())
                : speech.say(
                        "session.edges", edge(response.lowerEdge()), edge(response.upperEdge()));
    }

    private static List<Response> lowestLevel(Results results) {
        double level = results.response().stream().mapToDouble(Response::levelDb).min().orElse(0);
        return results.response().stream().filter(r -> r.levelDb() == level).toList();
    }

    private String line(String key, String channel, String text) {
        return speech.say(key, speech.told(channel), text);
    }
}
