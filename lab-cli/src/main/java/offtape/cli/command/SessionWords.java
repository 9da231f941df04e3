package offtape.cli.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import offtape.core.unit.Quantity;
import offtape.report.result.Distortion;
import offtape.report.result.HealthNote;
import offtape.report.result.Noise;
import offtape.report.result.Response;
import offtape.report.result.Results;
import offtape.report.result.TransportSpeed;

/** The headline figures of a session as lines for the terminal. */
final class SessionWords {

    private SessionWords() {}

    static List<String> lines(Results results) {
        List<String> lines = new ArrayList<>();
        if (results.interfaceFigures() == null) {
            lines.add(
                    "Speed            "
                            + Figures.signed(results.speed().deviation())
                            + ", wow and flutter "
                            + peak(results.speed().weightedPeak()));
        } else {
            lines.add("Delay            " + Figures.text(results.interfaceFigures().delay()));
        }
        TransportSpeed own = results.speed().transport();
        if (own != null) {
            lines.add(
                    "Transport itself "
                            + "wow and flutter "
                            + peak(own.weightedPeak())
                            + " (above: as heard off tape)");
        }
        if (results.timing().headDelay().isKnown()) {
            lines.add(
                    "Heads            "
                            + Figures.text(results.timing().headDelay())
                            + " apart, "
                            + Figures.text(results.timing().headSpacing()));
        }
        lines.addAll(PassWords.lines(results.speed().passes()));
        lowestLevel(results).forEach(r -> lines.add(line("Response", r.channel(), edges(r))));
        for (Distortion d : results.distortion()) {
            if (d.levelAtK3ThreePercent().isKnown()) {
                lines.add(
                        line(
                                "K3 reaches 3 %",
                                d.channel(),
                                Figures.signed(d.levelAtK3ThreePercent()) + " recorded"));
            }
        }
        for (Noise n : results.noise()) {
            lines.add(line("Noise", n.channel(), weighted(n.aWeighted())));
        }
        for (HealthNote n : results.health()) {
            if (!n.severity().equals("note")) {
                lines.add("Mind: " + n.message());
            }
        }
        lines.addAll(VerdictLines.of(results));
        return lines;
    }

    private static String peak(Quantity q) {
        return Figures.text(q) + (q.isKnown() ? " weighted peak" : "");
    }

    private static String weighted(Quantity q) {
        return Figures.text(q) + (q.isKnown() ? ", A-weighted" : "");
    }

    private static String edge(Quantity hz) {
        return hz.isKnown() ? Figures.value(hz) : "unknown";
    }

    private static String edges(Response response) {
        boolean neither = !response.lowerEdge().isKnown() && !response.upperEdge().isKnown();
        return neither
                ? response.upperEdge().reason()
                : edge(response.lowerEdge()) + " to " + edge(response.upperEdge()) + " Hz (−3 dB)";
    }

    private static List<Response> lowestLevel(Results results) {
        double level = results.response().stream().mapToDouble(Response::levelDb).min().orElse(0);
        return results.response().stream().filter(r -> r.levelDb() == level).toList();
    }

    private static String line(String what, String channel, String text) {
        return String.format(Locale.ROOT, "%-16s %-5s %s", what, channel, text);
    }
}
