package offtape.report.locate;

/**
 * Where a moment of the programme lies in the recording: straight lines between knots, continued
 * beyond the first and the last with the slope there.
 */
public final class TimeMap {

    private final double[] programme;
    private final double[] recording;

    /**
     * A map through knots.
     *
     * @param programmeSeconds times in the programme, rising, at least two
     * @param recordingSeconds times in the recording, rising, as many
     */
    public TimeMap(double[] programmeSeconds, double[] recordingSeconds) {
        if (programmeSeconds.length < 2 || programmeSeconds.length != recordingSeconds.length) {
            throw new IllegalArgumentException("a time map needs two knots or more");
        }
        for (int i = 1; i < programmeSeconds.length; i++) {
            if (!(programmeSeconds[i] > programmeSeconds[i - 1]
                    && recordingSeconds[i] > recordingSeconds[i - 1])) {
                throw new IllegalArgumentException("the knots of a time map must rise");
            }
        }
        this.programme = programmeSeconds.clone();
        this.recording = recordingSeconds.clone();
    }

    /** A straight line: recording = offset + stretch · programme. */
    public static TimeMap straight(double offsetSeconds, double stretch, double lengthSeconds) {
        return new TimeMap(
                new double[] {0, lengthSeconds},
                new double[] {offsetSeconds, offsetSeconds + stretch * lengthSeconds});
    }

    /** Time in the recording of a time in the programme, seconds. */
    public double recordingSeconds(double programmeSeconds) {
        int i = knotBefore(programme, programmeSeconds);
        return recording[i] + stretch(i) * (programmeSeconds - programme[i]);
    }

    /** Time in the programme of a time in the recording, seconds. */
    public double programmeSeconds(double recordingSeconds) {
        int i = knotBefore(recording, recordingSeconds);
        return programme[i] + (recordingSeconds - recording[i]) / stretch(i);
    }

    /**
     * Tape speed over nominal at a time in the programme, as the map knows it: slow changes only,
     * no wow. Above 1 the return is short and its tones are high.
     */
    public double speedRatio(double programmeSeconds) {
        return 1 / stretch(knotBefore(programme, programmeSeconds));
    }

    private double stretch(int knot) {
        return (recording[knot + 1] - recording[knot]) / (programme[knot + 1] - programme[knot]);
    }

    private static int knotBefore(double[] knots, double value) {
        int low = 0;
        int high = knots.length - 1;
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (knots[middle] <= value) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
