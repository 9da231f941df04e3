package offtape.report.locate;

import java.util.List;
import offtape.core.programme.Cue;

/**
 * A programme found in a recording.
 *
 * @param map where each moment of the programme lies
 * @param recordingSeconds length of the recording
 * @param delaySeconds where the first frame of the programme lies in the recording
 * @param delayUncertaintySeconds expanded uncertainty of that, k = 2
 * @param signs for each channel +1 upright, −1 inverted, 0 not heard
 * @param startMarkerFound whether the first marker was heard
 * @param endMarkerFound whether the last marker was heard
 */
public record Location(
        TimeMap map,
        double recordingSeconds,
        double delaySeconds,
        double delayUncertaintySeconds,
        List<Integer> signs,
        boolean startMarkerFound,
        boolean endMarkerFound) {

    /** Copies the list so that the location cannot change. */
    public Location {
        signs = List.copyOf(signs);
    }

    /** Whether the recording holds the whole of a cue. */
    public boolean covers(Cue cue, double sheetRateHz) {
        return map.recordingSeconds(cue.startFrame() / sheetRateHz) >= 0
                && map.recordingSeconds(cue.endFrame() / sheetRateHz) <= recordingSeconds;
    }
}
