package offtape.report.result;

/**
 * Replay response of one channel from the tones of a tape.
 *
 * @param channel {@code left} or {@code right}
 * @param tone numbers of the tones
 * @param frequencyHz nominal frequencies, rising
 * @param asReadDb level re the zero tone less what the list says was recorded, dB
 * @param uncertaintyDb expanded, k = 2
 * @param correctedDb as it would read if the tape had been recorded to the equalisation the machine
 *     is set to, dB; null if one of the two was not stated
 */
public record TapeResponse(
        String channel,
        int[] tone,
        double[] frequencyHz,
        double[] asReadDb,
        double[] uncertaintyDb,
        double[] correctedDb) {}
