package offtape.report.measure.channel;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Phase by gain against filters whose phase has a closed form. */
class ResponsePhaseTest {

    /** 48 bands an octave over seven decades, so that nothing is missing beyond the ends. */
    private static final double[] HZ =
            IntStream.range(0, 1116).mapToDouble(i -> 0.1 * Math.pow(2, i / 48.0)).toArray();

    private static double at(double[] phase, double hz) {
        return phase[(int) Math.rint(48 * Math.log(hz / 0.1) / Math.log(2))];
    }

    /** A low-pass of first order: |H| = 1/√(1 + (f/f₁)²), phase −atan(f/f₁). */
    @Test
    void firstOrderLowPass() {
        double[] gain = Arrays.stream(HZ).map(f -> -Math.log(Math.hypot(1, f / 3000))).toArray();
        double[] phase = ResponsePhase.of(HZ, gain);
        assertEquals(-Math.atan(0.1), at(phase, 300), 0.005);
        assertEquals(-Math.PI / 4, at(phase, 3000), 0.01);
        assertEquals(-Math.atan(3), at(phase, 9000), 0.01);
    }

    /** A high-pass of first order leads: phase atan(f₁/f). */
    @Test
    void firstOrderHighPass() {
        double[] gain = Arrays.stream(HZ).map(f -> -Math.log(Math.hypot(1, 50 / f))).toArray();
        double[] phase = ResponsePhase.of(HZ, gain);
        assertEquals(Math.PI / 4, at(phase, 50), 0.01);
        assertEquals(Math.atan(0.05), at(phase, 1000), 0.005);
    }
}
