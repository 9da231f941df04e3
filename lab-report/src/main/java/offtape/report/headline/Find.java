package offtape.report.headline;

import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.result.Channels;
import offtape.report.result.Distortion;
import offtape.report.result.Noise;
import offtape.report.result.Response;
import offtape.report.result.Results;

/** Looks up parts of results; what a session does not hold is found as unknown, never as null. */
public final class Find {

    private static final Sentences SAID = Sentences.near(Find.class);

    /** Names of the channels in the order in which they are shown. */
    public static final List<String> CHANNELS = List.of("left", "right");

    private static final String NOT_MEASURED = SAID.say("not-measured");

    private Find() {}

    /** {@code figure}, or an unknown one if there is none. */
    public static Quantity figure(Quantity figure) {
        return Objects.requireNonNullElse(figure, Quantity.unknown(NOT_MEASURED));
    }

    /** The value of a figure, if it is known. */
    public static OptionalDouble value(Quantity figure) {
        return figure != null && figure.isKnown()
                ? OptionalDouble.of(figure.value())
                : OptionalDouble.empty();
    }

    /** The sweep levels of a session from the lowest up, dB. */
    public static List<Double> sweepLevels(Results results) {
        return results.response().stream().map(Response::levelDb).distinct().sorted().toList();
    }

    /** The response of a channel at a level. */
    public static Optional<Response> response(Results results, String channel, double levelDb) {
        return results.response().stream()
                .filter(r -> channel.equals(r.channel()) && r.levelDb() == levelDb)
                .findFirst();
    }

    /** The response of a channel at the lowest level of the session. */
    public static Optional<Response> quietResponse(Results results, String channel) {
        return sweepLevels(results).stream()
                .findFirst()
                .flatMap(level -> response(results, channel, level));
    }

    /** The ladder of the lowest frequency, the one on which K3 is told. */
    public static Optional<Distortion> toneLadder(Results results, String channel) {
        return results.distortion().stream()
                .filter(d -> channel.equals(d.channel()))
                .min(Comparator.comparingDouble(Distortion::frequencyHz));
    }

    /** The ladder of the highest frequency if there is more than one. */
    public static Optional<Distortion> trebleLadder(Results results, String channel) {
        Optional<Distortion> tone = toneLadder(results, channel);
        return results.distortion().stream()
                .filter(d -> channel.equals(d.channel()))
                .max(Comparator.comparingDouble(Distortion::frequencyHz))
                .filter(d -> d.frequencyHz() > tone.orElseThrow().frequencyHz());
    }

    /** The noise of a channel. */
    public static Optional<Noise> noise(Results results, String channel) {
        return results.noise().stream().filter(n -> channel.equals(n.channel())).findFirst();
    }

    /** How the channels compare, wholly unknown if the session does not tell. */
    public static Channels channels(Results results) {
        return Objects.requireNonNullElse(results.channels(), Channels.unknown(NOT_MEASURED));
    }
}
