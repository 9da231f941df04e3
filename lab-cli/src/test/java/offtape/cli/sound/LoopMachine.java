package offtape.cli.sound;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;

/**
 * What stands between output and input in tests: a machine that is late, fast, louder or inverted
 * on a channel, bends what it gets, and whose return is rounded to 24 bits.
 *
 * @param late frames from the start of recording to the first played frame, at least 2000
 * @param fast by which share it returns fast
 * @param gains one factor a channel
 * @param curve what becomes of a sample before all else
 */
public record LoopMachine(double late, double fast, double[] gains, DoubleUnaryOperator curve) {

    /** Half as long as the interpolation of this machine; longer than that of the project. */
    static final int HALF = 64;

    private static final double FULL = 8_388_608;

    /** A wire. */
    public static LoopMachine wire(int late) {
        return new LoopMachine(late, 0, new double[] {1, 1}, x -> x);
    }

    /** The same with other gains. */
    public LoopMachine withGains(double... others) {
        return new LoopMachine(late, fast, others, curve);
    }

    /** The same at another speed and moment. */
    public LoopMachine withTime(double otherLate, double otherFast) {
        return new LoopMachine(otherLate, otherFast, gains, curve);
    }

    /** The same that bends what it gets. */
    public LoopMachine withCurve(DoubleUnaryOperator other) {
        return new LoopMachine(late, fast, gains, other);
    }

    /** Which played frame is heard at a recorded one. */
    double place(long recorded) {
        return (recorded - late) * (1 + fast);
    }

    /** What is heard at a place among played frames. */
    double at(double[] played, int count, int channel, double place) {
        double x = 0;
        if (place == Math.rint(place)) {
            int i = (int) place;
            x = i >= 0 && i < count ? curve.applyAsDouble(played[i]) : 0;
        } else {
            int middle = (int) Math.floor(place);
            for (int i = middle - HALF + 1; i <= middle + HALF; i++) {
                if (i >= 0 && i < count) {
                    double d = place - i;
                    double window = 0.5 + 0.5 * Math.cos(Math.PI * d / (HALF + 1));
                    double sinc = Math.sin(Math.PI * d) / (Math.PI * d);
                    x += curve.applyAsDouble(played[i]) * sinc * window * window;
                }
            }
        }
        double y = gains[Math.min(channel, gains.length - 1)] * x;
        return Math.max(-FULL, Math.min(FULL - 1, Math.rint(y * FULL))) / FULL;
    }

    @Override
    public String toString() {
        return "late " + late + ", fast " + fast + ", gains " + Arrays.toString(gains);
    }
}
