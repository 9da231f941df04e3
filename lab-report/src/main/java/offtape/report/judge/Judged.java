package offtape.report.judge;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.headline.Find;
import offtape.report.headline.Headline;
import offtape.report.result.Distortion;
import offtape.report.result.Noise;
import offtape.report.result.Results;
import offtape.report.result.Speed;
import offtape.report.result.Verdict;

/** The figures that a limit may be set for. */
enum Judged {
    SPEED_DEVIATION("speed-deviation", "%", false, (r, c) -> speed(r, Speed::deviation)),
    WOW_AND_FLUTTER("wow-and-flutter", "%", false, (r, c) -> speed(r, Speed::weightedPeak)),
    BALANCE("balance", "dB", false, (r, c) -> Find.channels(r).balance()),
    INTERCHANNEL_DELAY(
            "interchannel-delay", "µs", false, (r, c) -> Find.channels(r).interchannelDelay()),
    CROSSTALK(
            "crosstalk",
            "dB",
            true,
            (r, c) ->
                    c.equals("left")
                            ? Find.channels(r).crosstalkRightToLeft()
                            : Find.channels(r).crosstalkLeftToRight()),
    LEVEL_AT_3_PERCENT(
            "level-at-3-percent",
            "dB",
            true,
            (r, c) ->
                    Find.toneLadder(r, c)
                            .map(Distortion::levelAtK3ThreePercent)
                            .orElseGet(Judged::noLadder)),
    WEIGHTED_NOISE_DISTANCE(
            "weighted-noise-distance",
            "dB",
            true,
            (r, c) -> Find.noise(r, c).map(Noise::dynamicRange).orElseGet(Judged::noNoise)),
    NOISE_DISTANCE("noise-distance", "dB", true, Judged::noiseDistance),
    RESPONSE("response", "dB", true, (r, c) -> null);

    private static final Sentences SAID = Sentences.near(Judged.class);

    private final String key;
    private final String unit;
    private final boolean perChannel;
    private final BiFunction<Results, String, Quantity> figure;

    Judged(
            String key,
            String unit,
            boolean perChannel,
            BiFunction<Results, String, Quantity> figure) {
        this.key = key;
        this.unit = unit;
        this.perChannel = perChannel;
        this.figure = figure;
    }

    /** As a set of limits names it. */
    String key() {
        return key;
    }

    /** The trade's name. */
    String words() {
        return SAID.say("name-" + key);
    }

    /** What it tells somebody who does not know the name, a clause that begins with "how". */
    String plain() {
        return SAID.say("plain-" + key);
    }

    /** Unit of its limits. */
    String unit() {
        return unit;
    }

    /** Whether each channel has its own. */
    boolean isPerChannel() {
        return perChannel;
    }

    /** The figure of a channel, or of the machine; that of a response is a curve and none. */
    Quantity of(Results results, String channel) {
        return Find.figure(figure.apply(results, channel));
    }

    /** The one of that key. */
    static Optional<Judged> named(String key) {
        return Arrays.stream(values()).filter(j -> j.key.equals(key)).findFirst();
    }

    /** The one that a check is of. */
    static Optional<Judged> of(Verdict.Check check) {
        return Arrays.stream(values())
                .filter(
                        j ->
                                check.quantity().equals(j.words())
                                        || j.perChannel
                                                && check.quantity().startsWith(j.words() + ", "))
                .findFirst();
    }

    private static Quantity speed(Results results, Function<Speed, Quantity> figure) {
        return results.speed() == null ? null : figure.apply(results.speed());
    }

    private static Quantity noLadder() {
        return Quantity.unknown(Headline.NO_LADDER);
    }

    private static Quantity noNoise() {
        return Quantity.unknown(Headline.NO_SILENCE);
    }

    private static Quantity noiseDistance(Results results, String channel) {
        Quantity noise =
                Find.noise(results, channel).map(Noise::unweighted).orElseGet(Judged::noNoise);
        Quantity top =
                Find.toneLadder(results, channel)
                        .map(Distortion::maximumOutputLevel)
                        .orElseGet(Judged::noLadder);
        if (!noise.isKnown() || !top.isKnown()) {
            return noise.isKnown() ? top : noise;
        }
        return Quantity.known(
                top.value() - noise.value(),
                "dB",
                Math.hypot(top.uncertainty(), noise.uncertainty()));
    }
}
