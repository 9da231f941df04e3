package offtape.report.apply.correct;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import offtape.core.unit.Quantity;

/**
 * A programme held against what the tape takes once the filter has boosted it.
 *
 * @param file its name
 * @param sampleRateHz its frames a second
 * @param peakDbfs its highest sample, dB re full scale
 * @param filteredPeakDbfs its highest sample behind the filter
 * @param lowerForFullScale by how much it has to be lower to stay within full scale there, dB
 * @param lowerForTape by how much it has to be lower so that no band is compressed by more than 1
 *     dB, 0 dB or more
 * @param channels one entry a channel
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record MusicCheck(
        String file,
        int sampleRateHz,
        double peakDbfs,
        double filteredPeakDbfs,
        double lowerForFullScale,
        Quantity lowerForTape,
        List<Channel> channels) {

    /** Copies the list. */
    public MusicCheck {
        channels = List.copyOf(channels);
    }

    /**
     * Its third-octave bands on one channel.
     *
     * @param channel {@code left} or {@code right}
     * @param frequencyHz middles of the bands, rising
     * @param levelDb level of the loudest tenth of a second in each, dB re reference
     * @param boostedDb the same behind the filter
     * @param limitDb level at which the tape compresses by 1 dB, or null if that is not known
     * @param overDb by how much it is exceeded in each band, 0 where it is not, or null likewise
     */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Channel(
            String channel,
            double[] frequencyHz,
            double[] levelDb,
            double[] boostedDb,
            double[] limitDb,
            double[] overDb) {}
}
