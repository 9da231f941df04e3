package offtape.report.apply.correct;

import java.util.List;
import offtape.core.unit.Quantity;

/**
 * The correction tried on a simulated machine: the programme passed through filter and machine, and
 * through machine and filter, and both returns measured against the programme as it was.
 *
 * @param machine file with the machine's description
 * @param lowerByDb by how much the programme was lower, either way, dB
 * @param channels one entry a channel
 */
public record Verification(String machine, double lowerByDb, List<Channel> channels) {

    /** Copies the list. */
    public Verification {
        channels = List.copyOf(channels);
    }

    /**
     * What was found on one channel.
     *
     * @param channel {@code left} or {@code right}
     * @param fromHz lowest frequency of the figures: 40 Hz, or where the correction says it ends
     * @param toHz highest frequency: 15 kHz, or where the correction says it ends
     * @param worstDb largest distance of the return from the target, filter before the tape, dB
     * @param worstHz where that is
     * @param rmsDb root mean square of the distance, every octave alike, dB
     * @param worstAfterTapeDb largest distance with the filter after the tape, dB
     * @param noisePredicted dB, change of the A-weighted noise by the filter after the tape, as
     *     said
     * @param noiseMeasured dB, the same as measured: of the way after less the way before the tape
     *     at one level of the programme
     * @param unweightedPredicted dB, the same without weighting, as said
     * @param unweightedMeasured dB, as measured
     * @param frequencyHz frequencies of the return's response, rising
     * @param afterDb its response with the filter before the tape, dB re 1 kHz, same length
     */
    public record Channel(
            String channel,
            double fromHz,
            double toHz,
            double worstDb,
            double worstHz,
            double rmsDb,
            double worstAfterTapeDb,
            Quantity noisePredicted,
            Quantity noiseMeasured,
            Quantity unweightedPredicted,
            Quantity unweightedMeasured,
            double[] frequencyHz,
            double[] afterDb) {}
}
