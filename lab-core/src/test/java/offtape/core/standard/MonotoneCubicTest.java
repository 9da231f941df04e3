package offtape.core.standard;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import offtape.reference.Source;
import org.junit.jupiter.api.Test;

class MonotoneCubicTest {

    private static final double[] X = {0, 1, 3, 4, 6};
    private static final double[] Y = {0, 2, 2.1, 7, 6};
    private final MonotoneCubic curve = new MonotoneCubic(X, Y);

    @Test
    void passesThroughItsPointsAndStaysBetweenThem() {
        for (int i = 0; i < X.length; i++) {
            assertEquals(Y[i], curve.applyAsDouble(X[i]), 1e-14);
        }
        for (int i = 0; i + 1 < X.length; i++) {
            double low = Math.min(Y[i], Y[i + 1]);
            double high = Math.max(Y[i], Y[i + 1]);
            for (double t = 0; t <= 1; t += 0.01) {
                double y = curve.applyAsDouble(X[i] + t * (X[i + 1] - X[i]));
                assertTrue(y >= low - 1e-12 && y <= high + 1e-12);
            }
        }
    }

    /** On a straight line all chords are equal, so are the slopes, and the cubic is the line. */
    @Test
    void aStraightLineStaysOne() {
        MonotoneCubic line = new MonotoneCubic(new double[] {1, 2, 4}, new double[] {3, 5, 9});
        for (double x = -1; x < 7; x += 0.37) {
            assertEquals(2 * x + 1, line.applyAsDouble(x), 1e-13);
        }
    }

    /**
     * Points (0,0), (1,1), (3,5): chords 1 and 2 over widths 1 and 2, so the middle slope is (5 +
     * 4) / (5/1 + 4/2) = 9/7, and the first slope its chord, 1. Halfway in the first piece: 0.5 +
     * 0.25 · (0.5·1 − 0.5·9/7) = 0.5 − 0.25/7.
     */
    @Test
    @Source("Fritsch and Butland, SIAM J. Sci. Stat. Comput. 5 (1984), 300-304")
    void slopeIsTheWeightedHarmonicMeanOfTheChords() {
        MonotoneCubic cubic = new MonotoneCubic(new double[] {0, 1, 3}, new double[] {0, 1, 5});
        assertEquals(0.5 - 0.25 / 7, cubic.applyAsDouble(0.5), 1e-14);
    }
}
