package offtape.report.apply.level;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.Optional;

/**
 * How hot a machine can be recorded, by one session.
 *
 * @param machineName the user's name for the machine, or null
 * @param tape the tape used, or null
 * @param tapeSpeedMmPerS nominal tape speed, or null if not stated
 * @param madeAt when it was recorded, ISO 8601
 * @param referenceDbfs level of its programme's reference, dB re a full-scale sine, or null
 * @param channels each channel by itself
 * @param pair both together
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record OperatingLevels(
        String machineName,
        String tape,
        Double tapeSpeedMmPerS,
        String madeAt,
        Double referenceDbfs,
        List<ChannelLevels> channels,
        List<PairLevel> pair) {

    /** Copies the lists. */
    public OperatingLevels {
        channels = List.copyOf(channels);
        pair = List.copyOf(pair);
    }

    /** The level of the pair for a K3 in percent, if it was asked for. */
    public Optional<PairLevel> atK3(double percent) {
        return pair.stream()
                .filter(p -> p.what().equals(PairLevel.K3) && p.value() == percent)
                .findFirst();
    }

    /** The level of the pair for 1 dB of compression. */
    public Optional<PairLevel> atOneDb() {
        return pair.stream().filter(p -> p.what().equals(PairLevel.COMPRESSION)).findFirst();
    }
}
