package offtape.report.measure.distortion;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class CrossingTest {

    /** x³ + x rises through 10 at x = 2 (8 + 2). */
    @Test
    void theCrossingIsFound() {
        assertEquals(2, Crossing.rising(x -> x * x * x + x, -3, 6, 10), 1e-8);
    }

    /** sin x rises through ½ at π/6 and again a turn later: the first counts, falling does not. */
    @Test
    void theFirstRisingCrossingCounts() {
        assertEquals(Math.PI / 6, Crossing.rising(Math::sin, 0, 20, 0.5), 1e-8);
        assertEquals(Math.PI * 13 / 6, Crossing.rising(Math::sin, 1, 20, 0.5), 1e-8);
    }

    @Test
    void whatIsNotReachedIsNot() {
        assertTrue(Double.isNaN(Crossing.rising(x -> x, 0, 1, 1.1)));
        assertTrue(Double.isNaN(Crossing.rising(x -> x, 0, 1, -0.1)), "above it already");
        assertEquals(1, Crossing.rising(x -> x, 0, 1, 1), 1e-8);
        assertTrue(Double.isNaN(Crossing.rising(x -> x, 0, 1, 0)), "it was never below");
    }

    /** −(x − 2)² is highest at 2; a rising line at its end. */
    @Test
    void theHighestPlaceIsFound() {
        assertEquals(2, Crossing.highest(x -> -(x - 2) * (x - 2), 0, 5), 0.05);
        assertEquals(5, Crossing.highest(x -> x, 0, 5), 0);
        assertEquals(0, Crossing.highest(x -> -x, 0, 5), 0);
    }
}
