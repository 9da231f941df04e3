package offtape.report.headline;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.result.Channels;
import offtape.report.result.Distortion;
import offtape.report.result.Noise;
import offtape.report.result.Response;
import offtape.report.result.Results;
import offtape.report.result.Speed;

/**
 * One of the handful of figures that open a report.
 *
 * @param name the trade's name for it
 * @param plain what it means to somebody who does not know the name
 * @param unit of its values
 * @param signed whether a plus sign says something
 * @param aim which way is better
 * @param figures left and right, or one for the whole machine
 */
public record Headline(
        String name, String plain, String unit, boolean signed, Aim aim, List<Quantity> figures) {

    private static final Sentences SAID = Sentences.near(Headline.class);

    /** Name of the lower edge. */
    public static final String LOWER_EDGE = SAID.say("lower-edge");

    /** Name of the upper edge. */
    public static final String UPPER_EDGE = SAID.say("upper-edge");

    /** Name of the record level at which K3 reaches 3 %. */
    public static final String LEVEL_AT_K3 = SAID.say("level-at-k3");

    /** Name of the A-weighted noise. */
    public static final String NOISE = SAID.say("noise");

    /** Name of the speed deviation. */
    public static final String SPEED_DEVIATION = SAID.say("speed-deviation");

    /** Name of wow and flutter. */
    public static final String WOW_AND_FLUTTER = SAID.say("wow-and-flutter");

    private static final String NO_SWEEP = SAID.say("no-sweep");

    /** Why a figure of a channel without a ladder is unknown. */
    public static final String NO_LADDER = SAID.say("no-ladder");

    /** Why a figure of a channel without silence is unknown. */
    public static final String NO_SILENCE = SAID.say("no-silence");

    /** The headline figures of a session, always the same ones in the same order. */
    public static List<Headline> of(Results results) {
        Channels channels = Find.channels(results);
        Subject subject = Subject.of(results);
        return List.of(
                perChannel(
                        LOWER_EDGE,
                        SAID.say("plain.lower-edge"),
                        "Hz",
                        false,
                        Aim.LOWER,
                        c -> edge(results, c, Response::lowerEdge)),
                perChannel(
                        UPPER_EDGE,
                        SAID.say("plain.upper-edge"),
                        "Hz",
                        false,
                        Aim.HIGHER,
                        c -> edge(results, c, Response::upperEdge)),
                perChannel(
                        LEVEL_AT_K3,
                        SAID.say("plain.level-at-k3"),
                        "dB",
                        true,
                        Aim.HIGHER,
                        c -> ladder(results, c, Distortion::levelAtK3ThreePercent)),
                perChannel(
                        SAID.say("output-level"),
                        SAID.say("plain.output-level"),
                        "dB",
                        true,
                        Aim.HIGHER,
                        c -> ladder(results, c, Distortion::maximumOutputLevel)),
                perChannel(
                        NOISE,
                        SAID.say(subject.words("plain.noise-machine", "plain.noise-interface")),
                        "dB",
                        true,
                        Aim.LOWER,
                        c -> noise(results, c)),
                perChannel(
                        SAID.say("crosstalk"),
                        SAID.say("plain.crosstalk"),
                        "dB",
                        true,
                        Aim.LOWER,
                        c ->
                                c.equals("left")
                                        ? channels.crosstalkRightToLeft()
                                        : channels.crosstalkLeftToRight()),
                whole(
                        SPEED_DEVIATION,
                        SAID.say(subject.words("plain.speed-machine", "plain.speed-interface")),
                        "%",
                        true,
                        Aim.NEARER_ZERO,
                        speed(results, Speed::deviation)),
                whole(
                        WOW_AND_FLUTTER,
                        SAID.say(isMean(results) ? "plain.wavering-mean" : "plain.wavering"),
                        "%",
                        false,
                        Aim.LOWER,
                        speed(results, Speed::weightedPeak)),
                whole(
                        SAID.say("balance"),
                        SAID.say("plain.balance"),
                        "dB",
                        true,
                        Aim.NEARER_ZERO,
                        channels.balance()),
                whole(
                        SAID.say("interchannel-delay"),
                        SAID.say("plain.interchannel-delay"),
                        "µs",
                        true,
                        Aim.NEARER_ZERO,
                        channels.interchannelDelay()));
    }

    /** The headline figure of that name. */
    public static Headline named(Results results, String name) {
        return named(of(results), name).orElseThrow();
    }

    /** The one of that name, if it is among them. */
    public static Optional<Headline> named(List<Headline> all, String name) {
        return all.stream().filter(h -> h.name().equals(name)).findFirst();
    }

    /** Whether there is one figure a channel. */
    public boolean isPerChannel() {
        return figures.size() > 1;
    }

    private static Headline whole(
            String name, String plain, String unit, boolean signed, Aim aim, Quantity figure) {
        return new Headline(name, plain, unit, signed, aim, List.of(Find.figure(figure)));
    }

    private static Headline perChannel(
            String name,
            String plain,
            String unit,
            boolean signed,
            Aim aim,
            Function<String, Quantity> figure) {
        return new Headline(
                name,
                plain,
                unit,
                signed,
                aim,
                Find.CHANNELS.stream().map(figure).map(Find::figure).toList());
    }

    private static Quantity speed(Results results, Function<Speed, Quantity> figure) {
        return results.speed() == null ? null : figure.apply(results.speed());
    }

    private static boolean isMean(Results results) {
        return results.speed() != null && results.speed().passes() != null;
    }

    private static Quantity edge(
            Results results, String channel, Function<Response, Quantity> edge) {
        return orUnknown(Find.quietResponse(results, channel).map(edge), NO_SWEEP);
    }

    private static Quantity ladder(
            Results results, String channel, Function<Distortion, Quantity> figure) {
        return orUnknown(Find.toneLadder(results, channel).map(figure), NO_LADDER);
    }

    private static Quantity noise(Results results, String channel) {
        return orUnknown(Find.noise(results, channel).map(Noise::aWeighted), NO_SILENCE);
    }

    private static Quantity orUnknown(Optional<Quantity> figure, String reason) {
        return figure.orElseGet(() -> Quantity.unknown(reason));
    }
}
