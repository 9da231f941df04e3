package offtape.core.standard;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

/** Comparisons with published figures. */
public final class Checks {

    private Checks() {}

    /**
     * The actual figure lies within a tolerance of the published one, given with half a unit of its
     * last digit. A tolerance that would let zero pass for a figure other than zero is refused,
     * unless the figure itself is no larger than its rounding.
     *
     * @param rounding half a unit of the last published digit
     * @param more what the code may deviate beyond the rounding
     */
    public static void assertPublished(
            double published, double actual, double rounding, double more, String what) {
        double tolerance = rounding + more;
        assertTrue(
                tolerance < Math.abs(published) || Math.abs(published) <= 2 * rounding,
                () -> what + ": a tolerance of " + tolerance + " says nothing of " + published);
        // 1e-12 for figures that lie exactly on the edge of their rounding.
        assertEquals(published, actual, tolerance + 1e-12, what);
    }

    /** Within a share of the published figure, which is not zero. */
    public static void assertWithin(double published, double actual, double share, String what) {
        assertTrue(share < 1 && published != 0, what);
        assertEquals(published, actual, share * Math.abs(published), what);
    }
}
