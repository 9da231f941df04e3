package offtape.report.apply.model;

import java.util.List;
import offtape.report.result.Speed;
import offtape.report.result.SpeedComponent;
import offtape.report.result.TransportSpeed;

/**
 * A motion with the lines and the random rest that were measured.
 *
 * @param lines steady lines of the deviation
 * @param restDb density of the rest's power, dB re 1 %² per hertz, over rate
 * @param lowHz lower end of the rest
 * @param highHz upper end of the rest
 */
record MotionModel(List<SpeedComponent> lines, PointCurve restDb, double lowHz, double highHz) {

    /** The motion heard in the return; null if no tone told it. */
    static MotionModel heard(Speed speed) {
        return speed.spectrum() == null || speed.seconds() == null
                ? null
                : new MotionFit(speed.components(), speed.seconds())
                        .fit(
                                speed.spectrum().frequencyHz(),
                                speed.spectrum().peakPercent(),
                                speed.wowRms(),
                                speed.flutterRms(),
                                speed.weightedRms());
    }

    /** The transport's own; null if it is not known. */
    static MotionModel ofTransport(Speed speed) {
        TransportSpeed t = speed.transport();
        return t == null || t.spectrum() == null || speed.seconds() == null
                ? null
                : new MotionFit(t.components(), speed.seconds())
                        .fit(
                                t.spectrum().frequencyHz(),
                                t.spectrum().peakPercent(),
                                t.wowRms(),
                                t.flutterRms(),
                                t.weightedRms());
    }

    /** Root mean square of the lateness that the motion gives, seconds. */
    double latenessSeconds() {
        double sum = 0;
        for (SpeedComponent line : lines) {
            double peak = line.peakPercent() / 100 / (2 * Math.PI * line.middleHz());
            sum += peak * peak / 2;
        }
        double ratio = Math.pow(2, 1.0 / 12);
        for (double hz = lowHz; restDb != null && hz < highHz; hz *= ratio) {
            double density = 1e-4 * Math.pow(10, restDb(hz) / 10);
            sum += density * hz * (ratio - 1) / Math.pow(2 * Math.PI * hz, 2);
        }
        return Math.sqrt(sum);
    }

    /** Density of the rest, held beyond the ends of what was read. */
    double restDb(double hz) {
        return restDb.held(hz);
    }
}
