package offtape.report.measure.sweep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import offtape.reference.Source;
import org.junit.jupiter.api.Test;

class LocalFitTest {

    /** A parabola is its own fit: 3 − 2·7 + ½·49 = 13.5 at x = 7, without scatter. */
    @Test
    void aParabolaIsFittedExactly() {
        double[] x = places(21);
        LocalFit fit = LocalFit.at(x, values(x, v -> 3 - 2 * v + 0.5 * v * v), 7, 4);
        assertEquals(13.5, fit.value(), 1e-10);
        assertEquals(-2 + 7, fit.slope(), 1e-10);
        assertEquals(0, fit.standardError(), 1e-10);
        assertEquals(53.29, LocalFit.at(x, values(x, v -> v * v), 7.3, 4).value(), 1e-10);
    }

    /** Points that are not finite are left out; beyond the reach they do not matter. */
    @Test
    void otherPointsDoNotEnter() {
        double[] x = places(41);
        double[] y = values(x, v -> Math.abs(v - 20) <= 8 ? v : 1e6);
        y[18] = Double.NaN;
        y[23] = Double.NEGATIVE_INFINITY;
        assertEquals(20, LocalFit.at(x, y, 20, 8).value(), 1e-9);
    }

    @Test
    void tooFewPointsOrOneSideTellNothing() {
        double[] x = places(21);
        double[] y = values(x, v -> v);
        assertNull(LocalFit.at(x, y, 10, 1.9), "three points");
        assertNull(LocalFit.at(x, y, 25, 9), "nothing above");
        assertNull(LocalFit.at(x, y, -4.5, 9.9), "nothing below");
        assertEquals(10, LocalFit.at(x, y, 10, 2).value(), 1e-9, "five points");
    }

    /**
     * The variance of a quadratic smoothing's value over 2m + 1 points, re that of a point, is
     * 3(3m² + 3m − 1) / ((2m − 1)(2m + 1)(2m + 3)): 0.05489 for m = 20. The scatter of the value
     * over many draws must agree with it, and the stated error with the scatter.
     */
    @Test
    @Source("A. Savitzky and M. J. E. Golay, Analytical Chemistry 36(8), 1964, quadratic weights")
    void standardErrorIsThatOfTheValue() {
        double theory = Math.sqrt(0.05489);
        Random random = new Random(9);
        double[] x = places(41);
        double squares = 0;
        double stated = 0;
        int draws = 2000;
        for (int d = 0; d < draws; d++) {
            LocalFit fit = LocalFit.at(x, values(x, v -> random.nextGaussian()), 20, 20);
            squares += fit.value() * fit.value() / draws;
            stated += fit.standardError() / draws;
        }
        // 2000 draws know a deviation to 1/√4000 = 1.6 %.
        assertEquals(theory, Math.sqrt(squares), 0.05 * theory);
        assertEquals(theory, stated, 0.05 * theory);
    }

    /**
     * Residuals of 1, −4, 6, −4, 1 are the third kind of a difference, which no parabola explains:
     * their squares are 70, the variance 70/(5 − 3) · 2.25/5 = 15.75.
     */
    @Test
    void theScatterHasTwoDegreesOfFreedomOfFivePoints() {
        double[] x = {0, 1, 2, 3, 4};
        LocalFit fit = LocalFit.at(x, new double[] {2, -2, 9, 0, 6}, 2, 2);
        // 1 − 4·… laid over a line of slope 1 that is 3 in the middle
        assertEquals(3, fit.value(), 1e-9);
        assertEquals(1, fit.slope(), 1e-9);
        assertEquals(Math.sqrt(15.75), fit.standardError(), 1e-9);
    }

    /** A point at the place itself stands for either side; one at the reach's end counts. */
    @Test
    void thePlaceItselfIsOnBothSides() {
        double[] x = places(21);
        double[] y = values(x, v -> v);
        assertEquals(0, LocalFit.at(x, y, 0, 4).value(), 1e-9, "first point");
        assertEquals(20, LocalFit.at(x, y, 20, 4).value(), 1e-9, "last point");
        assertNull(LocalFit.at(x, y, 0, 3.99), "four points");
        assertNull(LocalFit.at(x, y, -0.01, 8));
        assertNull(LocalFit.at(x, y, 20.01, 8));
    }

    private static double[] places(int n) {
        return IntStream.range(0, n).asDoubleStream().toArray();
    }

    private static double[] values(double[] x, DoubleUnaryOperator f) {
        return IntStream.range(0, x.length).mapToDouble(i -> f.applyAsDouble(x[i])).toArray();
    }
}
