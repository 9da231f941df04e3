package offtape.report.measure.speed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Straight lines through ten seconds, at 100 values a second: ten are joined to one point. */
class DriftTest {

    private static final double RATE = 100;

    private static Drift of(double seconds, DoubleUnaryOperator percent) {
        double[] x = new double[(int) Math.round(seconds * RATE)];
        Arrays.setAll(x, i -> percent.applyAsDouble((i + 0.5) / RATE));
        Drift drift = new Drift(RATE);
        drift.next(x);
        return drift;
    }

    /** A line is its own: 0.1 % a minute reach 0.1 % · seconds / 60, to the very ends. */
    @ParameterizedTest
    @ValueSource(doubles = {10, 10.5, 12.2, 60, 60.3})
    void aStraightLineIsReadFromEndToEnd(double seconds) {
        Drift up = of(seconds, t -> 2 + 0.1 * t / 60);
        assertEquals(0.1 * seconds / 60, up.reach(), 1e-10);
        assertEquals(0, up.doubt(), 1e-10);
        assertEquals(0.1 * seconds / 60, of(seconds, t -> 1 - 0.1 * t / 60).reach(), 1e-10);
    }

    @Test
    void lessThanTenSecondsTellNone() {
        Drift brief = of(9.99, t -> t);
        assertEquals(0, brief.reach());
        assertEquals(0, brief.doubt());
    }

    /**
     * Of c·t² about the middle the line at t₀ under any even weights of variance σ² has the height
     * c·(t₀² + σ²) and the slope 2·c·t₀. The lowest is that at the middle. In 60 s the highest is
     * that at t₀ = 25 s, five seconds on: c·(25² + 2·25·5) = 875·c more. A point of ten values
     * stands for its beginning, so that the end lies half a point, 0.05 s, farther: 877.5·c.
     */
    @Test
    void aBowReachesFromItsMiddleToItsEnds() {
        Drift bow = of(60, t -> 1e-4 * (t - 30) * (t - 30));
        assertEquals(877.5e-4, bow.reach(), 1e-9);
        assertEquals(0, bow.doubt(), 1e-9);
        assertEquals(877.5e-4, of(60, t -> -1e-4 * (t - 30) * (t - 30)).reach(), 1e-9);
    }

    /** What is asked for twice is told twice the same. */
    @Test
    void askingAgainChangesNothing() {
        Drift drift = of(20, t -> 0.01 * t + 0.1 * Math.sin(2 * Math.PI * 0.25 * t));
        double reach = drift.reach();
        assertEquals(reach, drift.reach());
    }

    /**
     * Under Hann's weights n turns in the window leave 1/(π·n·(n² − 1)) of their height at most, up
     * and down, and Blackman's leave less. So the two differ by no more than that, and twice their
     * difference covers what wow does to the reach.
     */
    @ParameterizedTest
    @CsvSource({"0.35, 0.1", "0.35, 0.5", "0.55, 0.1", "0.55, 0.4", "0.85, 0.4"})
    void theDoubtIsOfTheSizeOfWhatWowDoes(double hz, double percent) {
        double turns = 10 * hz;
        double most = 2 * percent / (Math.PI * turns * (turns * turns - 1));
        for (double phase = 0; phase < 6; phase += 0.7) {
            double at = phase;
            Drift drift = of(40, t -> 0.1 * t / 40 + percent * Math.sin(2 * Math.PI * hz * t + at));
            double error = Math.abs(drift.reach() - 0.1);
            assertTrue(error <= 2 * drift.doubt() + 1e-6, error + " of " + drift.doubt());
            assertTrue(drift.doubt() < most, drift.doubt() + " of " + most);
        }
    }
}
