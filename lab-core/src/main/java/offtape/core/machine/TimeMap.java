package offtape.core.machine;

import java.io.IOException;
import java.util.Locale;
import offtape.core.machine.spec.MachineSpec;
import offtape.core.machine.spec.RecorderSpec;

/**
 * The true time map of one return. Return time is seconds as the recorder counts them: frame number
 * divided by the nominal sample rate. Programme time is seconds from the programme's first frame as
 * the player counts them.
 */
public final class TimeMap {

    private final CaptureMap map;
    private final double clock;
    private final double offsetSeconds;
    private final double programmeLengthSeconds;
    private final double tailSeconds;

    private TimeMap(
            CaptureMap map,
            double clock,
            double offsetSeconds,
            double programmeLengthSeconds,
            double tailSeconds) {
        this.map = map;
        this.clock = clock;
        this.offsetSeconds = offsetSeconds;
        this.programmeLengthSeconds = programmeLengthSeconds;
        this.tailSeconds = tailSeconds;
    }

    static TimeMap of(MachineSpec spec, double programmeLengthSeconds, int returnRateHz) {
        RecorderSpec recorder = spec.recorder();
        double clock = 1 + 1e-6 * recorder.clockErrorPpm();
        double delay = recorder.delaySamples() / returnRateHz / clock;
        double offset = recorder.startSeconds() + delay;
        CaptureMap map = CaptureMaps.of(spec, offset, programmeLengthSeconds);
        return new TimeMap(map, clock, offset, programmeLengthSeconds, recorder.tailSeconds());
    }

    /** Programme time heard at a return time, seconds; strictly rising. */
    public double programmeSeconds(double returnSeconds) {
        return map.programmeAt(machineSeconds(returnSeconds));
    }

    /**
     * Programme times of evenly spaced frames, each search starting from the frame before.
     *
     * @param firstFrame number of the first frame of the return
     * @param rateHz sample rate of the return
     * @param out as many times as {@code count}
     */
    void programmeSeconds(long firstFrame, double rateHz, double[] out, int count) {
        out[0] = programmeSeconds(firstFrame / rateHz);
        for (int i = 1; i < count; i++) {
            double u = machineSeconds((firstFrame + i) / rateHz);
            out[i] = map.programmeAt(u, out[i - 1] + 1 / rateHz);
        }
    }

    /** Return time at which a programme time is heard, seconds: the inverse. */
    public double returnSeconds(double programmeSeconds) {
        return (map.machineAt(programmeSeconds) + offsetSeconds) * clock;
    }

    /** Speed deviation heard in the return, r = d(programme time)/d(return time) − 1, a ratio. */
    public double returnDeviation(double returnSeconds) {
        double u = machineSeconds(returnSeconds);
        return map.rate(u, map.programmeAt(u)) / clock - 1;
    }

    /** The transport's own speed deviation at a return time, δ, a ratio; 0 in loopback. */
    public double transportDeviation(double returnSeconds) {
        return map.read().deviation(machineSeconds(returnSeconds));
    }

    /**
     * Deviation, a ratio, with which the tape was written that is heard at a return time; 0 if it
     * was written elsewhere.
     */
    public double writtenDeviation(double returnSeconds) {
        return map.write().deviation(programmeSeconds(returnSeconds));
    }

    /** Mean pitch of the return re the programme, over the programme's length; a ratio near 1. */
    public double meanRate() {
        return programmeLengthSeconds / (returnSeconds(programmeLengthSeconds) - returnSeconds(0));
    }

    /** Mean of the transport's own deviation while the programme is heard, a ratio. */
    public double meanTransportDeviation() {
        double first = map.machineAt(0);
        double last = map.machineAt(programmeLengthSeconds);
        return (map.read().position(last) - map.read().position(first)) / (last - first) - 1;
    }

    /** Length of the programme, seconds. */
    public double programmeLengthSeconds() {
        return programmeLengthSeconds;
    }

    /** Length of the return in frames at its nominal sample rate, 0 or more. */
    long frames(int returnRateHz) {
        double end = returnSeconds(programmeLengthSeconds) + tailSeconds * clock;
        return Math.max(0, (long) Math.ceil(end * returnRateHz));
    }

    /**
     * Writes the map as CSV, {@code returnSeconds,programmeSeconds,returnDeviationPercent,
     * transportDeviationPercent}, a line for each step from the programme's first frame to its end.
     *
     * @param rowsPerSecond lines a second of the return, usually 200 to 1000
     * @throws IOException if {@code out} does
     */
    public void writeCsv(Appendable out, double rowsPerSecond) throws IOException {
        out.append(
                "returnSeconds,programmeSeconds,returnDeviationPercent,"
                        + "transportDeviationPercent\n");
        double first = returnSeconds(0);
        long rows = (long) ((returnSeconds(programmeLengthSeconds) - first) * rowsPerSecond);
        for (long i = 0; i <= rows; i++) {
            double t = first + i / rowsPerSecond;
            out.append(
                    String.format(
                            Locale.ROOT,
                            "%.6f,%.9f,%.7f,%.7f\n",
                            t,
                            programmeSeconds(t),
                            100 * returnDeviation(t),
                            100 * transportDeviation(t)));
        }
    }

    double lagSeconds() {
        return map.lagSeconds();
    }

    private double machineSeconds(double returnSeconds) {
        return returnSeconds / clock - offsetSeconds;
    }
}
