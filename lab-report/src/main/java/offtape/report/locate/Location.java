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
 * @param heardFromSeconds before this time of the recording the programme is not heard
 * @param heardToSeconds after this time of the recording the programme is not heard
 * @param takes all takes of the programme in order if there are several, else empty
 * @param markers the markers that were heard, in order
 */
public record Location(
        TimeMap map,
        double recordingSeconds,
        double delaySeconds,
        double delayUncertaintySeconds,
        List<Integer> signs,
        boolean startMarkerFound,
        boolean endMarkerFound,
        double heardFromSeconds,
        double heardToSeconds,
        List<Take> takes,
        List<MarkerSight> markers) {

    /** How sharply the end of what is heard is known. */
    private static final double HEARD_S = 0.35;

    /** Copies the lists so that the location cannot change. */
    public Location {
        signs = List.copyOf(signs);
        takes = List.copyOf(takes);
        markers = List.copyOf(markers);
    }

    /** A location whose markers are not told. */
    public Location(
            TimeMap map,
            double recordingSeconds,
            double delaySeconds,
            double delayUncertaintySeconds,
            List<Integer> signs,
            boolean startMarkerFound,
            boolean endMarkerFound,
            double heardFromSeconds,
            double heardToSeconds,
            List<Take> takes) {
        this(
                map,
                recordingSeconds,
                delaySeconds,
                delayUncertaintySeconds,
                signs,
                startMarkerFound,
                endMarkerFound,
                heardFromSeconds,
                heardToSeconds,
                takes,
                List.of());
    }

    /** Whether the recording holds the whole of a cue. */
    public boolean covers(Cue cue, double sheetRateHz) {
        double from = map.recordingSeconds(cue.startFrame() / sheetRateHz);
        double to = map.recordingSeconds(cue.endFrame() / sheetRateHz);
        return from >= Math.max(0, heardFromSeconds - HEARD_S)
                && to <= Math.min(recordingSeconds, heardToSeconds + HEARD_S);
    }
}
