package offtape.core.dsp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.util.List;
import org.junit.jupiter.api.Test;

class BasebandTest {

    /** Turns of 3 rad a sample, just under half a turn, and back: 200 samples are 95 turns. */
    @Test
    void phaseIsFollowedOverManyTurns() {
        double[] expected = new double[400];
        for (int k = 0; k < expected.length; k++) {
            expected[k] = 3 * (k < 200 ? k : 400 - k);
        }
        double[] re = new double[400];
        double[] im = new double[400];
        for (int k = 0; k < re.length; k++) {
            re[k] = 0.3 * Math.cos(expected[k]);
            im[k] = 0.3 * Math.sin(expected[k]);
        }
        double[] phase = new Baseband(re, im, 1000, 0).unwrappedPhase();
        for (int k = 0; k < phase.length; k++) {
            assertEquals(expected[k], phase[k], 1e-11);
        }
    }

    /** |3 + 4i|² = 25, |0|² = 0: the mean is 12.5. Sample 1 lies 1/250 s after the first. */
    @Test
    void powerAndTime() {
        Baseband base = new Baseband(new double[] {3, 0}, new double[] {-4, 0}, 250, 1.5);
        assertEquals(25, base.power(0), 1e-14);
        assertEquals(12.5, base.meanPower(), 1e-14);
        assertEquals(1.504, base.seconds(1), 1e-15);
        assertEquals(2, base.size());
    }

    @Test
    void nothingHasNoPower() {
        Baseband empty = new Baseband(new double[0], new double[0], 250, 0);
        assertEquals(0, empty.meanPower(), 0);
        assertEquals(0, empty.unwrappedPhase().length);
    }

    /** Mean powers 1, 4.5 and 4: one high sample does not count for more than the mean of all. */
    @Test
    void theLoudestHasTheLargestMeanPower() {
        Baseband even = new Baseband(new double[] {1, 1}, new double[2], 250, 0);
        Baseband peaked = new Baseband(new double[] {0, 0}, new double[] {-3, 0}, 250, 0);
        Baseband turned = new Baseband(new double[] {2, 0}, new double[] {0, 2}, 250, 0);
        assertSame(peaked, Baseband.loudest(List.of(even, peaked, turned)));
        assertSame(turned, Baseband.loudest(List.of(turned, even)));
    }
}
