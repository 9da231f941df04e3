package offtape.report.measure.pass;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Lines whose peaks and phases are those of their formula. */
class LinePhasorsTest {

    private static final double RATE_HZ = 100;
    private static final int COUNT = 731;

    /** peak·cos(φ(t) − angle), φ counted from the middle of the stretch. */
    private static void add(double[] x, TapeLine line, double peak, double angle) {
        for (int i = 0; i < x.length; i++) {
            double t = (i - (COUNT - 1) / 2.0) / RATE_HZ;
            x[i] += peak * Math.cos(line.phase(t) - angle);
        }
    }

    private static double[] pointer(double peak, double angle) {
        return new double[] {peak * Math.cos(angle), peak * Math.sin(angle)};
    }

    /**
     * A steady line and a reel's, half a bin of 0.137 Hz off the grid, that overlap: each is read
     * as it is in each replay, and what else is in the series stays.
     */
    @Test
    void eachLineIsReadInEachReplayAndTakenOut() {
        TapeLine steady = new TapeLine(1.3, 0);
        TapeLine reel = new TapeLine(1.5, 0.02);
        double[][] x = new double[3][COUNT];
        for (int p = 0; p < x.length; p++) {
            add(x[p], steady, 0.06 - 0.01 * p, 0.3 + p);
            add(x[p], reel, 0.02 + 0.005 * p, -1.1 * p);
        }
        LinePhasors phasors = LinePhasors.takenOut(List.of(steady, reel), x, RATE_HZ);
        for (int p = 0; p < x.length; p++) {
            assertArrayEquals(pointer(0.06 - 0.01 * p, 0.3 + p), phasors.of(0)[p], 1e-12);
            assertArrayEquals(pointer(0.02 + 0.005 * p, -1.1 * p), phasors.of(1)[p], 1e-12);
            assertArrayEquals(new double[COUNT], x[p], 1e-12);
        }
    }

    /** No line: nothing is taken out. */
    @Test
    void withoutLinesNothingChanges() {
        double[][] x = {{1, 2, 3}, {-1, 0, 1}};
        LinePhasors.takenOut(List.of(), x, RATE_HZ);
        assertArrayEquals(new double[] {1, 2, 3}, x[0], 0);
        assertArrayEquals(new double[] {-1, 0, 1}, x[1], 0);
    }

    /**
     * What is left has nothing of the line in it: over whole turns a constant is at right angles to
     * a sine, so it stays as it is.
     */
    @Test
    void whatIsNoLineStays() {
        TapeLine line = new TapeLine(2, 0);
        double[][] x = {new double[100]};
        for (int i = 0; i < 100; i++) {
            x[0][i] = 0.7 + 0.1 * Math.cos(line.phase((i - 49.5) / RATE_HZ));
        }
        LinePhasors phasors = LinePhasors.takenOut(List.of(line), x, RATE_HZ);
        assertArrayEquals(new double[] {0.1, 0}, phasors.of(0)[0], 1e-12);
        for (double v : x[0]) {
            assertEquals(0.7, v, 1e-12);
        }
    }
}
