package offtape.cli.transfer;

import com.fasterxml.jackson.annotation.JsonInclude;

/**
 * What was done to one stem.
 *
 * @param file name of the stem and of its return
 * @param sha256 digest of the stem as it was sent
 * @param outcome {@code done}, {@code clipped} (written, but the input reached full scale) or {@code
 *     failed}
 * @param message why it failed or what to mind, or null
 * @param driveDb by how much it was raised before the machine, dB
 * @param delayMs from sending to return, milliseconds
 * @param rateErrorPpm by which the return ran fast, ppm
 * @param inverted whether polarity was turned back
 * @param pathGainDb level of the path, taken back, dB
 * @param peakInDbfs peak of the stem; null of a silent one
 * @param peakOutDbfs peak of its return
 * @param rmsInDbfs rms of the stem over all channels
 * @param rmsOutDbfs rms of its return
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record TransferEntry(
        String file,
        String sha256,
        String outcome,
        String message,
        Double driveDb,
        Double delayMs,
        Double rateErrorPpm,
        Boolean inverted,
        Double pathGainDb,
        Double peakInDbfs,
        Double peakOutDbfs,
        Double rmsInDbfs,
        Double rmsOutDbfs) {

    /** A stem that did not come through. */
    static TransferEntry failed(String file, String sha256, String message) {
        return new TransferEntry(
                file, sha256, "failed", message, null, null, null, null, null, null, null, null,
                null);
    }

    /** Whether its return was written. */
    boolean isWritten() {
        return !outcome.equals("failed");
    }
}
