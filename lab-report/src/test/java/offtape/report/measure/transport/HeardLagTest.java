package offtape.report.measure.transport;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** 101 values, 100 a second: half a second to either side of the middle. */
class HeardLagTest {

    private static final double DELAY_S = 0.2;

    private static double time(int i) {
        return (i - 50) / 100.0;
    }

    @Test
    void evenMotionIsWrittenOneDelayBefore() {
        HeardLag lag = HeardLag.of(new double[101], 100, DELAY_S);
        assertEquals(-0.7, lag.writtenAt(0), 1e-15);
        assertEquals(-0.2, lag.writtenAt(50), 1e-15);
        assertEquals(0.3, lag.writtenAt(100), 1e-15);
    }

    /** Heard 3 % fast, 0.03 s more were written a second. */
    @Test
    void fastSoundWasWrittenOverMoreTime() {
        double[] heard = new double[101];
        Arrays.fill(heard, 3);
        HeardLag lag = HeardLag.of(heard, 100, DELAY_S);
        for (int i = 0; i <= 100; i++) {
            assertEquals(1.03 * time(i) - DELAY_S, lag.writtenAt(i), 1e-14, "value " + i);
        }
    }

    /**
     * r(t) = 4 %·t/s: the lag shrinks by 0.02·t², whose mean over the values is 0.02 · (101² −
     * 1)/12 /100² = 0.0017 s; trapezia add up exactly to a parabola.
     */
    @Test
    void aChangingSpeedChangesTheLag() {
        double[] heard = new double[101];
        Arrays.setAll(heard, i -> 4 * time(i));
        HeardLag lag = HeardLag.of(heard, 100, DELAY_S);
        for (int i = 0; i <= 100; i++) {
            double expected = time(i) - DELAY_S + 0.02 * time(i) * time(i) - 0.0017;
            assertEquals(expected, lag.writtenAt(i), 1e-14, "value " + i);
        }
    }
}
