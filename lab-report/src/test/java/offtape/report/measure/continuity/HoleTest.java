package offtape.report.measure.continuity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import offtape.core.audio.MemoryAudio;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A second of 1 kHz with silence in it. The level is that of 4 ms, read every millisecond, so it is
 * silent from 2 ms after the beginning of a hole to 2 ms before its end, both included: of a hole
 * of n ms n − 3 values are.
 */
class HoleTest {

    private static final int RATE = 8000;

    /** The tone with a share of its level left from one moment to another. */
    private static double[] tone(double fromSeconds, double milliseconds, double left) {
        double[] x = new double[RATE];
        for (int i = 0; i < RATE; i++) {
            double t = (double) i / RATE;
            boolean in = t > fromSeconds - 1e-6 && t < fromSeconds + milliseconds / 1000 - 1e-6;
            x[i] = (in ? left : 1) * 0.2 * Math.sin(2 * Math.PI * 1000 * t + 0.3);
        }
        return x;
    }

    private static Optional<Double> in(double[] x, double from, double to, double late) {
        return Hole.in(new MemoryAudio("tone", RATE, x), from, to, late);
    }

    /**
     * Six tenths of the added time must be silent: 12 values of 20 ms are 15 ms of silence, 6 of 10
     * ms are 9, 4.8 of 8 ms are 8. What is shorter the averaging fills up.
     */
    @ParameterizedTest
    @CsvSource({
        "20, 0.020, true",
        "15, 0.020, true",
        "14, 0.020, false",
        "40, 0.020, true",
        "9, 0.010, true",
        "8, 0.010, false",
        "8, 0.008, true",
        "8, 0.0079, false",
        "20, -0.020, false"
    })
    void aHoleIsAsLongAsWhatWasAdded(double milliseconds, double late, boolean found) {
        Optional<Double> hole = in(tone(0.5, milliseconds, 0), 0.2, 0.8, late);
        assertEquals(found, hole.isPresent());
        hole.ifPresent(at -> assertEquals(0.502, at, 1e-6));
    }

    /** A tenth of the usual level, −20 dB, is the bound. */
    @ParameterizedTest
    @CsvSource({"0.08, true", "0.12, false"})
    void aSofterPartIsNoHole(double left, boolean found) {
        assertEquals(found, in(tone(0.5, 20, left), 0.2, 0.8, 0.02).isPresent());
    }

    /** With two of them nobody knows which is meant; one that is not looked at does not count. */
    @Test
    void onlyASingleHoleTells() {
        double[] one = tone(0.4, 20, 0);
        double[] other = tone(0.6, 20, 0);
        double[] both = new double[RATE];
        for (int i = 0; i < RATE; i++) {
            both[i] = one[i] == 0 ? 0 : other[i];
        }
        assertTrue(in(both, 0.2, 0.8, 0.02).isEmpty());
        assertEquals(0.602, in(both, 0.5, 0.8, 0.02).orElseThrow(), 1e-6);
        assertEquals(0.402, in(both, 0.2, 0.55, 0.02).orElseThrow(), 1e-6);
    }

    /** One that has begun before the stretch begins with it; one that outlasts it still counts. */
    @Test
    void aHoleAtTheEndsOfTheStretch() {
        assertEquals(0.51, in(tone(0.5, 40, 0), 0.51, 0.8, 0.03).orElseThrow(), 1e-6);
        assertEquals(0.502, in(tone(0.5, 40, 0), 0.2, 0.53, 0.03).orElseThrow(), 1e-6);
        assertTrue(in(tone(0.5, 40, 0), 0.2, 0.51, 0.03).isEmpty());
    }
}
