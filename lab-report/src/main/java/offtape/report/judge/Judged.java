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

/** The figures that a limit may be set for. */
enum Judged {
    SPEED_DEVIATION(
            "speed-deviation", "Speed deviation", "%", false, (r, c) -> speed(r, Speed::deviation)),
    WOW_AND_FLUTTER(
            "wow-and-flutter",
            "Wow and flutter, weighted peak",
            "%",
            false,
            (r, c) -> speed(r, Speed::weightedPeak)),
    BALANCE("balance", "Balance, right re left", "dB", false, (r, c) -> Find.channels(r).balance()),
    INTERCHANNEL_DELAY(
            "interchannel-delay",
            "Interchannel delay",
            "µs",
            false,
            (r, c) -> Find.channels(r).interchannelDelay()),
    CROSSTALK(
            "crosstalk",
            "Crosstalk at 1 kHz",
            "dB",
            true,
            (r, c) ->
                    c.equals("left")
                            ? Find.channels(r).crosstalkRightToLeft()
                            : Find.channels(r).crosstalkLeftToRight()),
    LEVEL_AT_3_PERCENT(
            "level-at-3-percent",
            "Record level at 3 % K3",
            "dB",
            true,
            (r, c) ->
                    Find.toneLadder(r, c)
                            .map(Distortion::levelAtK3ThreePercent)
                            .orElseGet(Judged::noLadder)),
    WEIGHTED_NOISE_DISTANCE(
            "weighted-noise-distance",
            "From A-weighted noise to 3 % K3",
            "dB",
            true,
            (r, c) -> Find.noise(r, c).map(Noise::dynamicRange).orElseGet(Judged::noNoise)),
    NOISE_DISTANCE(
            "noise-distance", "From unweighted noise to 3 % K3", "dB", true, Judged::noiseDistance),
    RESPONSE("response", "Frequency response", "dB", true, (r, c) -> null);

    private final String key;
    private final String words;
    private final String unit;
    private final boolean perChannel;
    private final BiFunction<Results, String, Quantity> figure;

    Judged(
            String key,
            String words,
            String unit,
            boolean perChannel,
            BiFunction<Results, String, Quantity> figure) {
        this.key = key;
        this.words = words;
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
