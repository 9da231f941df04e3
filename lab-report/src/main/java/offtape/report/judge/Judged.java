package offtape.report.judge;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import offtape.core.unit.Quantity;
import offtape.report.headline.Find;
import offtape.report.result.Distortion;
import offtape.report.result.Noise;
import offtape.report.result.Results;
import offtape.report.result.Speed;
import offtape.report.result.Verdict;

/** The figures that a limit may be set for. */
enum Judged {
    SPEED_DEVIATION(
            "speed-deviation",
            "Speed deviation",
            "how near the tape runs to its nominal speed",
            "%",
            false,
            (r, c) -> speed(r, Speed::deviation)),
    WOW_AND_FLUTTER(
            "wow-and-flutter",
            "Wow and flutter, weighted peak",
            "how steadily the pitch holds",
            "%",
            false,
            (r, c) -> speed(r, Speed::weightedPeak)),
    BALANCE(
            "balance",
            "Balance, right re left",
            "how equally loud both channels come back",
            "dB",
            false,
            (r, c) -> Find.channels(r).balance()),
    INTERCHANNEL_DELAY(
            "interchannel-delay",
            "Interchannel delay",
            "how exactly both channels come back at the same moment",
            "µs",
            false,
            (r, c) -> Find.channels(r).interchannelDelay()),
    CROSSTALK(
            "crosstalk",
            "Crosstalk at 1 kHz",
            "how little of one channel is heard on the other",
            "dB",
            true,
            (r, c) ->
                    c.equals("left")
                            ? Find.channels(r).crosstalkRightToLeft()
                            : Find.channels(r).crosstalkLeftToRight()),
    LEVEL_AT_3_PERCENT(
            "level-at-3-percent",
            "Record level at 3 % K3",
            "how loud a tone can be recorded before it is plainly distorted",
            "dB",
            true,
            (r, c) ->
                    Find.toneLadder(r, c)
                            .map(Distortion::levelAtK3ThreePercent)
                            .orElseGet(Judged::noLadder)),
    WEIGHTED_NOISE_DISTANCE(
            "weighted-noise-distance",
            "From A-weighted noise to 3 % K3",
            "how far audible hiss lies below the loudest clean tone",
            "dB",
            true,
            (r, c) -> Find.noise(r, c).map(Noise::dynamicRange).orElseGet(Judged::noNoise)),
    NOISE_DISTANCE(
            "noise-distance",
            "From unweighted noise to 3 % K3",
            "how far all noise, hum included, lies below the loudest clean tone",
            "dB",
            true,
            Judged::noiseDistance),
    RESPONSE(
            "response",
            "Frequency response",
            "how evenly low, middle and high tones come back",
            "dB",
            true,
            (r, c) -> null);

    private final String key;
    private final String words;
    private final String plain;
    private final String unit;
    private final boolean perChannel;
    private final BiFunction<Results, String, Quantity> figure;

    Judged(
            String key,
            String words,
            String plain,
            String unit,
            boolean perChannel,
            BiFunction<Results, String, Quantity> figure) {
        this.key = key;
        this.words = words;
        this.plain = plain;
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
        return words;
    }

    /** What it tells somebody who does not know the name, a clause that begins with "how". */
    String plain() {
        return plain;
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
                                check.quantity().equals(j.words)
                                        || j.perChannel
                                                && check.quantity().startsWith(j.words + ", "))
                .findFirst();
    }

    private static Quantity speed(Results results, Function<Speed, Quantity> figure) {
        return results.speed() == null ? null : figure.apply(results.speed());
    }

    private static Quantity noLadder() {
        return Quantity.unknown("No ladder of tones of this channel was measured.");
    }

    private static Quantity noNoise() {
        return Quantity.unknown("No silence of this channel was measured.");
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
