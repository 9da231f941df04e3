package offtape.report.measure.continuity;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import offtape.core.dsp.Baseband;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Phases by formula, 2000 values a second. Lines of 15 ms are compared from 5 ms before to 5 ms
 * behind a moment, so all moments within 5 ms of a jump see the whole of it.
 */
class PhaseJumpsTest {

    private static final double RATE = 2000;
    private static final double FIRST_S = 7;
    private static final double PLACE_S = 0.0051;

    private static List<Double> jumps(
            int count, double rate, DoubleUnaryOperator phase, DoubleUnaryOperator size) {
        double[] re = new double[count];
        double[] im = new double[count];
        for (int k = 0; k < count; k++) {
            re[k] = size.applyAsDouble(k) * Math.cos(phase.applyAsDouble(k));
            im[k] = size.applyAsDouble(k) * Math.sin(phase.applyAsDouble(k));
        }
        return PhaseJumps.in(new Baseband(re, im, rate, FIRST_S));
    }

    private static List<Double> jumps(int count, DoubleUnaryOperator phase) {
        return jumps(count, RATE, phase, k -> 0.1);
    }

    /** Whatever the tone's frequency lies beside: 0.1 rad a value are 32 Hz. */
    @ParameterizedTest
    @CsvSource({"0.81, 0", "-0.81, 0", "1.5, 0.1", "-3, -0.2", "2, 0.3"})
    void aJumpThatStaysIsFound(double radians, double slope) {
        List<Double> found = jumps(1000, k -> slope * k + (k < 400 ? 0 : radians));
        assertEquals(1, found.size());
        assertEquals(FIRST_S + 0.2, found.get(0), PLACE_S);
    }

    /** Less than 0.8 rad; a whole turn, which nobody sees; a change of speed at once. */
    @Test
    void thatIsNone() {
        assertEquals(List.of(), jumps(1000, k -> k < 400 ? 0 : 0.79));
        assertEquals(List.of(), jumps(1000, k -> 0.1 * k + (k < 400 ? 0 : 2 * Math.PI)));
        assertEquals(List.of(), jumps(1000, k -> 0.01 * Math.max(0, k - 400)));
    }

    /** What the lines differ by is taken within half a turn: 6 rad are −0.28. */
    @Test
    void nearlyATurnIsASmallJump() {
        assertEquals(List.of(), jumps(1000, k -> 0.3 * k + (k < 400 ? 0 : 6)));
    }

    /** Two that are nearer to each other than the lines reach, 2 · 20 ms, are told as one. */
    @ParameterizedTest
    @CsvSource({"50, 1", "100, 2", "300, 2"})
    void jumpsCloseTogetherAreOne(int apart, int count) {
        List<Double> found = jumps(1000, k -> (k < 400 ? 0 : 1) + (k < 400 + apart ? 0 : 1));
        assertEquals(count, found.size());
        if (count > 1) {
            assertEquals(FIRST_S + 0.2, found.get(0), PLACE_S);
            assertEquals(FIRST_S + 0.2 + apart / RATE, found.get(1), PLACE_S);
        }
    }

    /** Phase is not asked where the tone is weaker than half its usual size, for 60 ms here. */
    @ParameterizedTest
    @CsvSource({"0.051, 1", "0.049, 0", "0.001, 0"})
    void aWeakToneTellsNoPhase(double weak, int count) {
        List<Double> found =
                jumps(1000, RATE, k -> k < 400 ? 0 : 1.5, k -> Math.abs(k - 400) < 60 ? weak : 0.1);
        assertEquals(count, found.size());
    }

    /**
     * A jump of 0.9 rad before value 400. A line of 30 values with one of them on the other side of
     * it has lost 1/30 and a slope of 14.5/2247.5 over 24.5 values or more, a fifth: less than 0.8
     * rad are left. So the jump is seen from 390 to 410 alone, where neither line holds it. A weak
     * value w silences what has it in a line: w − 39 to w − 10 and w + 11 to w + 40.
     */
    @ParameterizedTest
    @CsvSource({"369, 410", "370, ", "379, ", "380, 390", "419, 410", "420, ", "429, ", "430, 390"})
    void aMomentIsSilencedByAWeakValueInItsLines(int weak, Integer seen) {
        List<Double> found = jumps(1000, RATE, k -> k < 400 ? 0 : 0.9, k -> k == weak ? 0.04 : 0.1);
        assertEquals(seen == null ? List.of() : List.of(FIRST_S + seen / RATE), found);
    }

    /**
     * A phase of d·k³, a speed that changes ever faster: lines of 30 values whose middles lie m =
     * 25 away miss it by d · (−2m³ + m · (3 · 74.9 − 134.6)) = −29 000 · d each, 74.9 being the
     * mean square of a line's places and 134.6 the ratio of their mean fourth power to it. With 58
     * 000 · d = 0.08 rad everywhere a jump must be ten times 1.4826 · 0.08 = 1.19 rad.
     */
    @ParameterizedTest
    @CsvSource({"-1.0, 0", "-1.6, 1", "1.0, 0", "1.6, 1"})
    void aJumpStandsFarOutOfWhatIsUsual(double radians, int count) {
        double d = 0.08 / 58_000;
        List<Double> found = jumps(500, k -> d * Math.pow(k - 250, 3) + (k < 200 ? 0 : radians));
        assertEquals(count, found.size());
    }

    /** The lines of 4 · 20 ms of moments, and 20 ms at both ends: 240 values. */
    @ParameterizedTest
    @CsvSource({"239, 0", "240, 1", "0, 0"})
    void aShortStretchTellsNothing(int values, int count) {
        assertEquals(count, jumps(values, k -> k < 45 ? 0 : 1.5).size());
    }

    /** A line takes three values: of 15 ms a rate of 167 Hz or more. */
    @ParameterizedTest
    @CsvSource({"150, 0", "200, 1"})
    void aLowRateTellsNothing(double rate, int count) {
        assertEquals(count, jumps(200, rate, k -> k < 90 ? 0 : 1.5, k -> 0.1).size());
    }
}
