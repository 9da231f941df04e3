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
final class Findings {

    private Findings() {}

    /** The sentences; empty only if nothing at all is known. */
    static List<String> of(Results results) {
        List<String> found = new ArrayList<>();
        add(found, tone(results));
        if (Subject.of(results) == Subject.MACHINE) {
            add(found, speed(results));
        }
        add(found, loudness(results));
        if (found.isEmpty()) {
            found.add("None of the headline figures could be told from this recording.");
        }
        return found;
    }

    private static void add(List<String> found, String sentence) {
        if (!sentence.isEmpty()) {
            found.add(sentence);
        }
    }

    /** The band that every measured channel returns. */
    private static String tone(Results results) {
        DoubleStream lower = edges(results, Response::lowerEdge);
        DoubleStream upper = edges(results, Response::upperEdge);
        OptionalDouble from = lower.max();
        OptionalDouble to = upper.min();
        if (from.isPresent() && to.isPresent() && from.getAsDouble() < to.getAsDouble()) {
            return "Quiet tones from "
                    + Numbers.frequency(from.getAsDouble())
                    + " to "
                    + Numbers.frequency(to.getAsDouble())
                    + " come back no more than 3 dB weaker than the middle of the range.";
        }
        if (to.isPresent()) {
            return "Quiet tones come back no more than 3 dB weaker than the middle of the range up to "
                    + Numbers.frequency(to.getAsDouble())
                    + ".";
        }
        return "";
    }

    private static DoubleStream edges(Results results, Function<Response, Quantity> edge) {
        return known(
                Find.CHANNELS.stream()
                        .flatMap(c -> Find.quietResponse(results, c).map(edge).stream())
                        .toList());
    }

    private static String speed(Results results) {
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
        return parts.isEmpty() ? "" : Words.sentence(Words.list(parts)) + ".";
    }

    /** Off tape the return's wavering is one thing and the tape's another. */
    private static String wavers(Results results, boolean its) {
        String size = Numbers.value(results.speed().weightedPeak(), false);
        TransportSpeed own = results.speed().transport();
        if (own == null) {
            return (its ? "its speed" : "the speed of the tape")
                    + " wavers by "
                    + size
                    + " (wow and flutter, weighted peak)";
        }
        return "the pitch of what comes back wavers by "
                + size
                + " (wow and flutter, weighted peak), "
                + (own.weightedPeak().isKnown()
                        ? "the tape itself by " + Numbers.value(own.weightedPeak(), false)
                        : "which is not what the tape itself does");
    }

    private static String runs(Quantity deviation) {
        if (Math.abs(deviation.value()) <= deviation.uncertainty()) {
            return "the tape runs at its nominal speed as far as can be told";
        }
        Quantity size =
                Quantity.known(
                        Math.abs(deviation.value()), deviation.unit(), deviation.uncertainty());
        return "the tape runs "
                + Numbers.value(size, false)
                + (deviation.value() > 0 ? " fast" : " slow");
    }

    private static String loudness(Results results) {
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
                                "a tone can be recorded up to "
                                        + Numbers.withUnit(
                                                Numbers.decimal(Math.abs(level), 1), "dB")
                                        + (level < 0 ? " below" : " above")
                                        + " the reference before its third harmonic (K3) reaches"
                                        + " 3 % on either channel"));
        hiss.ifPresent(
                level ->
                        parts.add(
                                Subject.of(results)
                                                .words(
                                                        "the hiss of silent tape lies ",
                                                        "the noise of the interface lies ")
                                        + Numbers.withUnit(Numbers.decimal(-level, 1), "dB")
                                        + " below the reference (A-weighted, noisier channel)"));
        return parts.isEmpty() ? "" : Words.sentence(Words.list(parts)) + ".";
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
