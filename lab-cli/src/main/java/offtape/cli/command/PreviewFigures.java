package offtape.cli.command;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;

/**
 * What is told of a preview.
 *
 * @param file name of the sound
 * @param out name of what was written, or null
 * @param machineName of the session, or null
 * @param sampleRateHz of both files
 * @param frames length of both
 * @param parts what the model did
 * @param levelDb by how much hotter it was sent
 * @param levelKept whether that was not taken back
 * @param seed of noise and motion
 * @param referenceDbfs level of the reference in the file's terms, dBFS
 * @param peakInDbfs highest magnitude of the file, or null of silence
 * @param peakSentDb the same as sent, dB re reference, or null
 * @param k3AtPeakPercent third harmonic of a tone of 1 kHz that has this peak, or null
 * @param compressionAtPeakDb how far that tone is compressed, or null
 * @param peakOutDbfs highest magnitude of what was written, or null
 * @param encoding {@code pcm-24} or {@code float-32}, or null
 * @param nulls how far the model cancels a simulated machine, or null
 * @param notes plain sentences
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record PreviewFigures(
        String file,
        String out,
        String machineName,
        int sampleRateHz,
        long frames,
        List<String> parts,
        double levelDb,
        boolean levelKept,
        long seed,
        double referenceDbfs,
        Double peakInDbfs,
        Double peakSentDb,
        Double k3AtPeakPercent,
        Double compressionAtPeakDb,
        Double peakOutDbfs,
        String encoding,
        List<Null> nulls,
        List<String> notes) {

    /**
     * One comparison.
     *
     * @param parts what machine and model did
     * @param nullDb rms of what is left re the machine's, after the best delay and gain
     * @param delayMicroseconds by how much the model was late
     * @param gainDb what the model had to be raised by
     */
    record Null(List<String> parts, double nullDb, double delayMicroseconds, double gainDb) {}
}
