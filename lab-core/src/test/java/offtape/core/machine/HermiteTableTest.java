package offtape.core.machine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** The interpolant between values and slopes. */
class HermiteTableTest {

    // From 0 to h within a step and level at both ends it is h·(3x² − 2x³), whose slope
    // 6h·(x − x²) is most in the middle, 1.5h a step.
    @Test
    void steepestSlopeMayLieBetweenThePoints() {
        HermiteTable rise = new HermiteTable(0, 100, new double[] {0, -0.02}, new double[2], false);
        assertEquals(1.5 * 0.02 * 100, rise.steepest(), 1e-12);
        assertEquals(-3, rise.slope(0.005), 1e-12);
    }

    // The same stretch leads from the last value of a table that repeats to its first.
    @Test
    void theSeamOfATableThatRepeatsCounts() {
        HermiteTable seam =
                new HermiteTable(0, 100, new double[] {0.02, 0.02, 0.02, 0}, new double[4], true);
        assertEquals(3, seam.steepest(), 1e-12);
        HermiteTable once =
                new HermiteTable(0, 100, new double[] {0, 0, 0, 0.02}, new double[4], true);
        assertEquals(3, once.steepest(), 1e-12);
    }

    @Test
    void straightLineIsAsSteepAsItsSlope() {
        HermiteTable line =
                new HermiteTable(
                        0, 10, new double[] {0, 0.02, 0.04}, new double[] {0.2, 0.2, 0.2}, false);
        assertEquals(0.2, line.steepest(), 1e-12);
    }

    @Test
    void valueThatIsNoNumberDoesNotGetLost() {
        HermiteTable broken =
                new HermiteTable(0, 10, new double[] {0, Double.NaN, 0}, new double[3], false);
        assertTrue(Double.isNaN(broken.steepest()));
    }
}
