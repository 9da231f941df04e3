package offtape.report.measure.sweep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A high-pass of second order at 28 Hz, whose phase is π − atan2(√2 x, 1 − x²) with x = f/28, seen
 * through the motion of the tape.
 */
class PhaseShareTest {

    private static final double[] HZ =
            IntStream.range(0, 160).mapToDouble(i -> 20 * Math.pow(2, i / 24.0)).toArray();

    private static final double[] LEAST =
            Arrays.stream(HZ)
                    .map(f -> f / 28)
                    .map(x -> Math.PI - Math.atan2(Math.sqrt(2) * x, 1 - x * x))
                    .map(p -> p > Math.PI ? p - 2 * Math.PI : p)
                    .toArray();

    /** Motion: late by so many milliseconds, and wow of 0.3 % peak at so many hertz. */
    private static double[] seen(double share, double lateMs, double wowHz, double turn) {
        double[] seen = new double[HZ.length];
        for (int i = 0; i < seen.length; i++) {
            // an octave lasts 1.2 s
            double t = 1.2 * i / 24;
            double wow =
                    wowHz == 0
                            ? 0
                            : 0.003 / (2 * Math.PI * wowHz) * Math.cos(2 * Math.PI * wowHz * t);
            double psi = share * LEAST[i] - 2 * Math.PI * HZ[i] * (lateMs / 1000 + wow) + turn;
            seen[i] = Math.IEEEremainder(psi, 2 * Math.PI);
        }
        return seen;
    }

    @ParameterizedTest
    @CsvSource({
        "1, 0, 0",
        "0, 0, 0",
        "1, 0.5, 0",
        "0, -0.5, 0",
        "1, 0.1, 4",
        "0, 0.1, 4",
        "1, 0, 0.63",
        "0, 0, 0.63",
        "0.5, 0.2, 0"
    })
    void theShareIsFoundThroughMotion(double share, double lateMs, double wowHz) {
        assertEquals(share, PhaseShare.of(24, HZ, seen(share, lateMs, wowHz, 0), LEAST), 1e-6);
        double[] turned = seen(share, lateMs, wowHz, Math.PI);
        assertEquals(share, PhaseShare.of(24, HZ, turned, LEAST), 1e-6);
    }

    /** Where the path turns nothing the answer does not matter, and the usual one is given. */
    @Test
    void withoutSlopesNothingIsTold() {
        double[] none = new double[HZ.length];
        assertEquals(1, PhaseShare.of(24, HZ, none, none), 0);
        Arrays.fill(none, Double.NaN);
        assertEquals(1, PhaseShare.of(24, HZ, none, LEAST), 0);
    }

    /** Within 0.3 of all or nothing the rest is the tape's motion. */
    @ParameterizedTest
    @CsvSource({"-0.2, 0", "0.29, 0", "0.31, 0.31", "0.69, 0.69", "0.71, 1", "1.4, 1"})
    void nearlyAllIsAll(double share, double told) {
        assertEquals(told, PhaseShare.of(24, HZ, seen(share, 0.1, 0, 0), LEAST), 1e-6);
    }

    /** A least phase that falls evenly by so much a point. */
    private static double[] falling(double radians) {
        return IntStream.range(0, HZ.length).mapToDouble(i -> 1 - radians * i).toArray();
    }

    /** 498 Hz is number 111 and the last under 500 Hz: from number 100 on there are twelve. */
    @ParameterizedTest
    @CsvSource({"359.1, 0", "359.3, 1"})
    void twelvePointsAreNeeded(double fromHz, double told) {
        assertEquals(359.19, HZ[100], 0.005);
        assertTrue(HZ[111] < 500 && HZ[112] > 500);
        assertEquals(told, PhaseShare.of(fromHz, HZ, new double[HZ.length], falling(0.05)));
        assertEquals(0, PhaseShare.of(HZ[100], HZ, new double[HZ.length], falling(0.05)));
    }

    /** Over 0.15 rad of difference or nothing is told: here over 107 steps from 22.4 Hz on. */
    @ParameterizedTest
    @CsvSource({"0.149, 1", "0.151, 0", "-0.149, 1", "-0.151, 0"})
    void aLevelPhaseTellsNothing(double spread, double told) {
        double[] least = falling(spread / 107);
        assertEquals(22.45, HZ[4], 0.005);
        assertEquals(told, PhaseShare.of(22.4, HZ, new double[HZ.length], least));
    }

    /** What rings below and what lies above 500 Hz, or behind a gap, does not enter. */
    @Test
    void onlyTheBassEnters() {
        double[] seen = seen(0.5, 0.2, 0, 0);
        for (int i = 0; i < seen.length; i++) {
            if (HZ[i] < 24 || HZ[i] > 500) {
                seen[i] = i % 3;
            }
        }
        assertEquals(0.5, PhaseShare.of(24, HZ, seen, LEAST), 1e-6);
        double[] gap = seen(0.5, 0.2, 0, 0);
        gap[60] = Double.NaN;
        for (int i = 61; i < gap.length; i++) {
            gap[i] = i % 3;
        }
        assertEquals(0.5, PhaseShare.of(24, HZ, gap, LEAST), 1e-6);
    }

    /** A curve that lies wholly below 500 Hz, or wholly below where it is asked for. */
    @Test
    void shortCurvesAreToldAsFarAsTheyReach() {
        double[] hz = Arrays.copyOf(HZ, 80);
        assertEquals(0, PhaseShare.of(24, hz, new double[80], Arrays.copyOf(LEAST, 80)));
        assertEquals(1, PhaseShare.of(1e4, hz, new double[80], Arrays.copyOf(LEAST, 80)));
    }
}
