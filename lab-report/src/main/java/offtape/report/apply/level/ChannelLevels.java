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
 * @param recordLevelDb record levels along the ladder, rising, dB re reference; for charts
 * @param k3Percent K3 along the ladder there, same length
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
        double[] recordLevelDb,
        double[] k3Percent,
        double[] dynamicRangeDb) {

    /** Copies the list. */
    public ChannelLevels {
        atK3 = List.copyOf(atK3);
    }

    /** K3 in percent at a record level, or null where the ladder does not tell it. */
    public Double k3At(double levelDb) {
        for (int i = 1; i < recordLevelDb.length; i++) {
            double low = recordLevelDb[i - 1];
            double high = recordLevelDb[i];
            if (levelDb >= low && levelDb <= high) {
                double part = (levelDb - low) / (high - low);
                return k3Percent[i - 1] * Math.pow(k3Percent[i] / k3Percent[i - 1], part);
            }
        }
        return null;
    }
}
