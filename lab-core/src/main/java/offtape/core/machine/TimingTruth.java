package offtape.core.machine;

import offtape.core.machine.spec.MachineSpec;
import offtape.core.transport.CaptureMode;

/**
 * Where the programme lies in the return.
 *
 * @param delayMs from the return's first frame to the programme's first frame, mean of the channels
 * @param leftDelayMs the same on the left
 * @param rightDelayMs the same on the right
 * @param meanDelayMs mean over the programme of return time less programme time: what is left of
 *     the delay when flutter is averaged out; {@code off-tape} and {@code loopback} only, else null
 * @param headDelayMs mean time from record to replay head; {@code off-tape} only, else null
 * @param headSpacingMm distance of the heads; {@code off-tape} only, else null
 * @param polarityLeft {@code normal} or {@code inverted}
 * @param polarityRight the same on the right
 * @param recordingClockErrorPpm by how much the recording clock is fast
 */
public record TimingTruth(
        double delayMs,
        double leftDelayMs,
        double rightDelayMs,
        Double meanDelayMs,
        Double headDelayMs,
        Double headSpacingMm,
        String polarityLeft,
        String polarityRight,
        double recordingClockErrorPpm) {

    private static final int SAMPLES = 10_000;

    static TimingTruth of(MachineRun run) {
        MachineSpec spec = run.spec();
        TimeMap map = run.timeMap();
        boolean offTape = spec.mode() == CaptureMode.OFF_TAPE;
        boolean inTime = offTape || spec.mode() == CaptureMode.LOOPBACK;
        double half = (run.swapped() ? -1 : 1) * run.azimuthDelaySeconds() / 2;
        return new TimingTruth(
                1000 * map.returnSeconds(0),
                1000 * map.returnSeconds(-half),
                1000 * map.returnSeconds(half),
                inTime ? 1000 * meanDelaySeconds(map) : null,
                offTape ? headDelayMs(map) : null,
                offTape ? spec.heads().spacingMm() : null,
                polarity(run, 0),
                polarity(run, 1),
                spec.recorder().clockErrorPpm());
    }

    private static double headDelayMs(TimeMap map) {
        return 1000 * map.lagSeconds() / (1 + map.meanTransportDeviation());
    }

    private static double meanDelaySeconds(TimeMap map) {
        double sum = 0;
        for (int i = 0; i < SAMPLES; i++) {
            double s = (i + 0.5) * map.programmeLengthSeconds() / SAMPLES;
            sum += map.returnSeconds(s) - s;
        }
        return sum / SAMPLES;
    }

    private static String polarity(MachineRun run, int input) {
        return run.chains().get(run.channelAt(input)).replayGain() < 0 ? "inverted" : "normal";
    }
}
