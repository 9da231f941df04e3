package offtape.report.apply.level;

import java.util.List;
import offtape.core.unit.Quantity;

/**
 * How hot one channel can be recorded.
 *
 * @param channel {@code left} or {@code right}
 * @param frequencyHz frequency of the ladder, 0 if there is none
 * @param atK3 where K3 reaches each wanted value, rising
 * @param oneDbLevel record level at which compression reaches 1 dB, dB re reference
 * @param oneDbDbfs the same as the tone's peak, dB re a full-scale sine
 * @param aWeightedNoise dB re reference
 * @param k3Percent K3 along the ladder, rising with level; for charts
 * @param dynamicRangeDb replay level there less the noise, dB, same length; empty if that is
 *     unknown
 */
public record ChannelLevels(
        String channel,
        double frequencyHz,
        List<LevelAtK3> atK3,
        Quantity oneDbLevel,
        Quantity oneDbDbfs,
        Quantity aWeightedNoise,
        double[] k3Percent,
        double[] dynamicRangeDb) {

    /** Copies the list. */
    public ChannelLevels {
        atK3 = List.copyOf(atK3);
    }
}
