package offtape.report.result;

import offtape.core.unit.Quantity;

/**
 * Where the programme lies in the recording.
 *
 * @param delay ms from the first frame of the recording to the first frame of the programme
 * @param headDelay ms between record and replay head
 * @param headSpacing mm between record and replay head
 * @param polarity {@code normal} or {@code inverted}
 * @param recordingClockError ppm by which the clocks of player and recorder differ
 */
public record Timing(
        Quantity delay,
        Quantity headDelay,
        Quantity headSpacing,
        String polarity,
        Quantity recordingClockError) {

    /** A figure that is missing is unknown. */
    public Timing {
        delay = Told.orUnknown(delay);
        headDelay = Told.orUnknown(headDelay);
        headSpacing = Told.orUnknown(headSpacing);
        recordingClockError = Told.orUnknown(recordingClockError);
    }
}
