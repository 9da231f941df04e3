package offtape.report.result;

import java.util.List;
import java.util.Objects;
import offtape.core.unit.Quantity;

/**
 * Distortion against level on one channel, from a ladder of steady tones.
 *
 * @param channel {@code left} or {@code right}
 * @param frequencyHz frequency of the ladder
 * @param steps one entry a tone, in order of level
 * @param levelAtK3OnePercent record level at which K3 reaches 1 %, dB re reference
 * @param levelAtK3ThreePercent record level at which K3 reaches 3 %, dB re reference
 * @param levelAtCompressionOneDb record level at which compression reaches 1 dB, dB re reference
 * @param maximumOutputLevel replay level at which K3 reaches 3 %, dB
 * @param saturationOutputLevel highest replay level of the ladder, dB; known for a 10 kHz ladder
 * @param maximumOutputLevelOnePercent replay level at which K3 reaches 1 %, dB
 * @param k3Slope how steeply K3 rises where it is small, dB per dB of record level: near 2 on tape
 * @param k3Curve the smooth curve through K3, percent; null if too few steps tell it
 * @param replayCurve the smooth curve through the replay levels, dB; null likewise
 */
public record Distortion(
        String channel,
        double frequencyHz,
        List<LadderStep> steps,
        Quantity levelAtK3OnePercent,
        Quantity levelAtK3ThreePercent,
        Quantity levelAtCompressionOneDb,
        Quantity maximumOutputLevel,
        Quantity saturationOutputLevel,
        Quantity maximumOutputLevelOnePercent,
        Quantity k3Slope,
        FittedCurve k3Curve,
        FittedCurve replayCurve) {

    /** Copies the list so that the record cannot change; a figure that is missing is unknown. */
    public Distortion {
        Objects.requireNonNull(channel, "channel");
        steps = List.copyOf(steps);
        levelAtK3OnePercent = Told.orUnknown(levelAtK3OnePercent);
        levelAtK3ThreePercent = Told.orUnknown(levelAtK3ThreePercent);
        levelAtCompressionOneDb = Told.orUnknown(levelAtCompressionOneDb);
        maximumOutputLevel = Told.orUnknown(maximumOutputLevel);
        saturationOutputLevel = Told.orUnknown(saturationOutputLevel);
        maximumOutputLevelOnePercent = Told.orUnknown(maximumOutputLevelOnePercent);
        k3Slope = Told.orUnknown(k3Slope);
    }
}
