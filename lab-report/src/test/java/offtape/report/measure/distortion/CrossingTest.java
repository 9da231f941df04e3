package offtape.report.measure.distortion;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

class CrossingTest {

    private static final double[] X = {-3, -2, -0.5, 0.2, 1, 2.5, 4, 6};

    /** x³ + x rises through 10 at x = 2 (8 + 2); a cubic through four points of it is itself. */
    @Test
    void aCubicIsCrossedExactly() {
        Crossing c = Crossing.rising(X, values(x -> x * x * x + x), 10);
        assertEquals(2, c.x(), 1e-8);
        assertEquals(4, c.index());
        // Slope of the chord from (1, 2) to (2.5, 18.125).
        assertEquals(16.125 / 1.5, c.slope(), 1e-12);
    }

    /** At either end three points are at hand: a parabola is still exact. x² = 2.25 at 1.5. */
    @Test
    void aParabolaIsCrossedExactlyAtTheEnds() {
        double[] x = {1, 2, 3};
        assertEquals(1.5, Crossing.rising(x, new double[] {1, 4, 9}, 2.25).x(), 1e-8);
        assertEquals(2.5, Crossing.rising(x, new double[] {1, 4, 9}, 6.25).x(), 1e-8);
        double[] two = {1, 3};
        assertEquals(2, Crossing.rising(two, new double[] {0, 10}, 5).x(), 1e-8);
    }

    @Test
    void theFirstRisingCrossingCounts() {
        double[] x = {0, 1, 2, 3, 4, 5};
        double[] y = {5, 0, 5, 0, 5, 0};
        assertEquals(1, Crossing.rising(x, y, 2.5).index());
        assertNull(Crossing.rising(x, y, 5.1));
        assertNull(Crossing.rising(new double[] {0, 1}, new double[] {3, 1}, 2), "falling");
    }

    @Test
    void aPointOnTheValueIsTheCrossing() {
        double[] x = {0, 1, 2, 3};
        assertEquals(2, Crossing.rising(x, new double[] {0, 1, 2, 3}, 2).x(), 1e-8);
        assertNull(Crossing.rising(x, new double[] {2, 3, 4, 5}, 2), "begins there");
    }

    @Test
    void valuesInBetweenAreThoseOfTheCubic() {
        double[] y = values(x -> 2 * x * x * x - x * x + 4);
        for (double at : new double[] {-1.9, -1, 0, 0.9, 3, 4}) {
            assertEquals(2 * at * at * at - at * at + 4, Crossing.valueAt(X, y, at), 1e-10);
        }
        assertEquals(25, Crossing.valueAt(X, values(x -> x * x), 5), 1e-10);
        assertEquals(9, Crossing.valueAt(X, values(x -> x * x), -3), 1e-10);
    }

    private static double[] values(DoubleUnaryOperator f) {
        return Arrays.stream(X).map(f).toArray();
    }
}
