package offtape.report.result;

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
        TrackSpacing tracks) {

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
        return new Session(
                machineName,
                tape,
                tapeSpeedMmPerS,
                other,
                madeAt,
                note,
                software,
                recordingSha256,
                tracks);
    }
}
