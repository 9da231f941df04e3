package offtape.report.result;

import java.util.List;
import offtape.core.unit.Quantity;

/**
 * One steady tone of a tape.
 *
 * @param number counted from 1 in the order of the recording
 * @param fromSeconds where it begins in the recording, within 0.15 s
 * @param toSeconds where it ends
 * @param frequency as heard, Hz
 * @param nominalHz the frequency it was recorded with, or null if not known
 * @param deviation of the frequency from nominal, %
 * @param purpose {@code reference}, {@code speed}, {@code azimuth}, {@code response} by the list of
 *     the tape, or null
 * @param recordedDb level it was recorded at by the list, dB re the tape's reference level, or null
 * @param levels one a channel
 * @param channelDifference dB, right re left
 * @param phaseDegrees of the right channel re the left one, −180 to 180, or null
 * @param interchannelDelay µs, positive if the right channel is late
 * @param azimuth arc minutes, positive if the right channel is late
 * @param delayWander µs, root mean square about the mean, up to 10 Hz
 * @param leftOutSeconds how long the tone was gone or much weaker or louder than usual, on any
 *     channel; that is not in the levels
 */
public record TapeTone(
        int number,
        double fromSeconds,
        double toSeconds,
        Quantity frequency,
        Double nominalHz,
        Quantity deviation,
        String purpose,
        Double recordedDb,
        List<ToneLevel> levels,
        Quantity channelDifference,
        Double phaseDegrees,
        Quantity interchannelDelay,
        Quantity azimuth,
        Quantity delayWander,
        double leftOutSeconds) {

    /** Copies the list so that the record cannot change. */
    public TapeTone {
        levels = List.copyOf(levels);
    }
}
