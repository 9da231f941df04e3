package offtape.core.dsp;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PhaseLawTest {

    /** Counts that are and are not whole stretches. */
    @ParameterizedTest
    @ValueSource(ints = {1, 31, 32, 33, 100_000})
    void aSmoothPhaseIsFollowedThroughASweep(int count) {
        // 16 Hz to 20 kHz at 1.7 s a factor e; the phase grows past 2e5 rad, whose last place is
        // 3e-11, and the parabola leaves 1e-7 rad.
        PhaseLaw law = PhaseLaw.smooth(t -> 2 * Math.PI * 16 * 1.7 * Math.expm1(t / 1.7));
        double[] cos = new double[count];
        double[] sin = new double[count];
        double start = 10.03;
        law.fill(start, 1 / 48_000.0, cos, sin);
        for (int i = 0; i < count; i++) {
            double phase = law.phaseRadians(start + i / 48_000.0);
            assertEquals(Math.cos(phase), cos[i], 2e-7, "value " + i);
            assertEquals(Math.sin(phase), sin[i], 2e-7, "value " + i);
        }
    }

    /** A parabola is its own parabola: only rounding is left. */
    @Test
    void aSteadilyRisingFrequencyIsExact() {
        PhaseLaw law = PhaseLaw.smooth(t -> 300 * t + 500 * t * t);
        double[] cos = new double[1000];
        double[] sin = new double[1000];
        law.fill(0, 1e-4, cos, sin);
        for (int i = 0; i < 1000; i++) {
            assertEquals(Math.cos(300e-4 * i + 500e-8 * i * i), cos[i], 1e-12);
            assertEquals(Math.sin(300e-4 * i + 500e-8 * i * i), sin[i], 1e-12);
        }
    }
}
