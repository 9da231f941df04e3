package offtape.report.render;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.DoubleStream;
import offtape.core.unit.Quantity;
import offtape.report.headline.Find;
import offtape.report.headline.Subject;
import offtape.report.result.Distortion;
import offtape.report.result.Noise;
import offtape.report.result.Response;
import offtape.report.result.Results;
import offtape.report.result.TransportSpeed;

/** What was found, in a few plain sentences that claim no more than the figures do. */
record Findings(Wording words) {

    /** The sentences; empty only if nothing at all is known. */
    static List<String> of(Wording words, Results results) {
        return new Findings(words).in(results);
    }

    private List<String> in(Results results) {
        List<String> found = new ArrayList<>();
        add(found, tone(results));
        if (Subject.of(results) == Subject.MACHINE) {
            add(found, speed(results));
        }
        add(found, loudness(results));
        if (found.isEmpty()) {
            found.add(words.say("session.nothing-found"));
        }
        return found;
    }

    private static void add(List<String> found, String sentence) {
        if (!sentence.isEmpty()) {
            found.add(sentence);
        }
    }

    /** The band that every measured channel returns. */
    private String tone(Results results) {
        DoubleStream lower = edges(results, Response::lowerEdge);
        DoubleStream upper = edges(results, Response::upperEdge);
        OptionalDouble from = lower.max();
        OptionalDouble to = upper.min();
        if (from.isPresent() && to.isPresent() && from.getAsDouble() < to.getAsDouble()) {
            return words.say(
                    "session.band",
                    words.frequency(from.getAsDouble()),
                    words.frequency(to.getAsDouble()));
        }
        return to.isPresent()
                ? words.say("session.band-up-to", words.frequency(to.getAsDouble()))
                : "";
    }

    private static DoubleStream edges(Results results, Function<Response, Quantity> edge) {
        return known(
                Find.CHANNELS.stream()
                        .flatMap(c -> Find.quietResponse(results, c).map(edge).stream())
                        .toList());
    }

    private String speed(Results results) {
        if (results.speed() == null) {
            return "";
        }
        Quantity deviation = Find.figure(results.speed().deviation());
        Quantity waver = Find.figure(results.speed().weightedPeak());
        List<String> parts = new ArrayList<>();
        if (deviation.isKnown()) {
            parts.add(runs(deviation));
        }
        if (waver.isKnown()) {
            parts.add(wavers(results, deviation.isKnown()));
        }
        return sentence(parts);
    }

    /** One clause, or two that are joined, as a sentence; nothing of none. */
    private String sentence(List<String> clauses) {
        if (clauses.isEmpty()) {
            return "";
        }
        String all =
                clauses.size() == 1
                        ? clauses.get(0)
                        : words.say("session.two-clauses", clauses.get(0), clauses.get(1));
        return words.sentence(all) + ".";
    }

    /** Off tape the return's wavering is one thing and the tape's another. */
    private String wavers(Results results, boolean its) {
        String size = words.value(results.speed().weightedPeak(), false);
        TransportSpeed own = results.speed().transport();
        if (own == null) {
            return words.say(its ? "session.wavers-its" : "session.wavers-tape", size);
        }
        return own.weightedPeak().isKnown()
                ? words.say("session.wavers-own", size, words.value(own.weightedPeak(), false))
                : words.say("session.wavers-not-own", size);
    }

    private String runs(Quantity deviation) {
        if (Math.abs(deviation.value()) <= deviation.uncertainty()) {
            return words.say("session.runs-nominal");
        }
        Quantity size =
                Quantity.known(
                        Math.abs(deviation.value()), deviation.unit(), deviation.uncertainty());
        return words.say(
                deviation.value() > 0 ? "session.runs-fast" : "session.runs-slow",
                words.value(size, false));
    }

    private String loudness(Results results) {
        OptionalDouble loud = known(ladders(results, Distortion::levelAtK3ThreePercent)).min();
        OptionalDouble hiss =
                known(
                                Find.CHANNELS.stream()
                                        .flatMap(c -> Find.noise(results, c).stream())
                                        .map(Noise::aWeighted)
                                        .toList())
                        .max();
        List<String> parts = new ArrayList<>();
        loud.ifPresent(
                level ->
                        parts.add(
                                words.say(
                                        level < 0 ? "session.loud-below" : "session.loud-above",
                                        decibels(Math.abs(level)))));
        hiss.ifPresent(
                level ->
                        parts.add(
                                words.say(
                                        Subject.of(results)
                                                .words(
                                                        "session.noise-machine",
                                                        "session.noise-interface"),
                                        decibels(-level))));
        return sentence(parts);
    }

    private String decibels(double level) {
        return Numbers.withUnit(words.decimal(level, 1), "dB");
    }

    private static List<Quantity> ladders(Results results, Function<Distortion, Quantity> figure) {
        return Find.CHANNELS.stream()
                .flatMap(c -> Find.toneLadder(results, c).map(figure).stream())
                .toList();
    }

    private static DoubleStream known(List<Quantity> figures) {
        return figures.stream().map(Find::value).flatMapToDouble(OptionalDouble::stream);
    }
}
