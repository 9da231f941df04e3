package offtape.report.result;

import com.fasterxml.jackson.annotation.JsonInclude;
import offtape.core.json.Range;
import offtape.core.standard.TrackSpacing;

/**
 * What was measured and how.
 *
 * @param machineName the user's name for the machine, or null
 * @param tape the tape used, as the user calls it, or null
 * @param tapeSpeedMmPerS nominal tape speed in millimetres per second, or null if not stated
 * @param mode capture mode, such as {@code reference-tape}, or null if it is not known
 * @param madeAt when the recording was made (time stamp of the file), ISO 8601 in UTC
 * @param note the user's remark, or null
 * @param software name and version of the software
 * @param recordingSha256 digest of the recording file, lower-case hexadecimal
 * @param tracks how far the two tracks lie apart, or null if not stated
 * @param recordingSampleRate frames a second of the recording, or null if not known
 * @param programmeSha256 digest of the programme's cue sheet, or null if not known
 * @param referenceDbfs level of the programme's reference, dB re a full-scale sine, or null if not
 *     known
 * @param loopback the loopback session that was taken out of the figures, or null if none was
 */
public record Session(
        String machineName,
        String tape,
        Double tapeSpeedMmPerS,
        String mode,
        String madeAt,
        String note,
        String software,
        String recordingSha256,
        TrackSpacing tracks,
        @JsonInclude(JsonInclude.Include.NON_NULL) Integer recordingSampleRate,
        @JsonInclude(JsonInclude.Include.NON_NULL) String programmeSha256,
        @JsonInclude(JsonInclude.Include.NON_NULL) Double referenceDbfs,
        @JsonInclude(JsonInclude.Include.NON_NULL) LoopbackUse loopback) {

    /** As in cue sheets. */
    private static final double LOWEST_REFERENCE_DBFS = -80;

    /** Checks the reference level. */
    public Session {
        Range.within("referenceDbfs", referenceDbfs, LOWEST_REFERENCE_DBFS, 0, "dB");
    }

    /** A session before its recording was looked at. */
    public Session(
            String machineName,
            String tape,
            Double tapeSpeedMmPerS,
            String mode,
            String madeAt,
            String note,
            String software,
            String recordingSha256,
            TrackSpacing tracks) {
        this(
                machineName,
                tape,
                tapeSpeedMmPerS,
                mode,
                madeAt,
                note,
                software,
                recordingSha256,
                tracks,
                null,
                null,
                null,
                null);
    }

    /** A session of which the distance of the tracks is not stated. */
    public Session(
            String machineName,
            String tape,
            Double tapeSpeedMmPerS,
            String mode,
            String madeAt,
            String note,
            String software,
            String recordingSha256) {
        this(
                machineName,
                tape,
                tapeSpeedMmPerS,
                mode,
                madeAt,
                note,
                software,
                recordingSha256,
                null);
    }

    /** The same session in another capture mode. */
    public Session withMode(String other) {
        return with(other, recordingSampleRate, programmeSha256, referenceDbfs, loopback);
    }

    /**
     * The same session with what its recording and programme tell.
     *
     * @param rateHz frames a second of the recording
     * @param programme digest of the programme's cue sheet
     * @param dbfs level of its reference, dB re a full-scale sine
     */
    public Session withRecording(int rateHz, String programme, double dbfs) {
        return with(mode, rateHz, programme, dbfs, loopback);
    }

    /** The same session less a loopback. */
    public Session withLoopback(LoopbackUse use) {
        return with(mode, recordingSampleRate, programmeSha256, referenceDbfs, use);
    }

    private Session with(
            String otherMode, Integer rateHz, String programme, Double dbfs, LoopbackUse use) {
        return new Session(
                machineName,
                tape,
                tapeSpeedMmPerS,
                otherMode,
                madeAt,
                note,
                software,
                recordingSha256,
                tracks,
                rateHz,
                programme,
                dbfs,
                use);
    }
}
