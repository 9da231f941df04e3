package offtape.report.measure.transport;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.Random;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.QRDecomposition;
import org.junit.jupiter.api.Test;

class LatticeInverseTest {

    /**
     * Differences 1 and 1 of one chain: u, u + 1, u + 2, whose mean is to be 0, so −1, 0, 1; the
     * first lies before the stretch. Two chains of a lag of 2 do not know of each other: the second
     * here has differences 0 and −2, so 2/3, 2/3, −4/3.
     */
    @Test
    void aChainIsTheRunningSumAboutItsMean() {
        assertArrayEquals(
                new double[] {0, 1}, LatticeInverse.solve(new double[] {1, 1}, 1, 0), 1e-9);
        assertArrayEquals(
                new double[] {0, 2.0 / 3, 1, -4.0 / 3},
                LatticeInverse.solve(new double[] {1, 0, 1, -2}, 2, 0),
                1e-9);
    }

    /**
     * One difference y and a ridge λ: (y − b + a)² + λ(a² + b²) is least for b = −a and, its slope
     * being 0, for b·(2 + λ) = y.
     */
    @Test
    void aRidgeHoldsBack() {
        double[] x = LatticeInverse.solve(new double[] {3}, 5, 0.5);
        assertEquals(3 / 2.5, x[0], 1e-12);
    }

    /** Against a general solver of least squares, on a lattice that does not come out even. */
    @Test
    void agreesWithAGeneralSolver() {
        int n = 23;
        int m = 4;
        double ridge = 0.03;
        Random random = new Random(7);
        double[] y = new double[n + n + m];
        double[][] a = new double[y.length][n + m];
        for (int i = 0; i < n; i++) {
            y[i] = random.nextGaussian();
            a[i][i + m] = 1;
            a[i][i] = -1;
        }
        for (int j = 0; j < n + m; j++) {
            a[n + j][j] = Math.sqrt(ridge);
        }
        double[] all =
                new QRDecomposition(new Array2DRowRealMatrix(a))
                        .getSolver()
                        .solve(new ArrayRealVector(y))
                        .toArray();
        double[] expected = Arrays.copyOfRange(all, m, n + m);
        double[] got = LatticeInverse.solve(Arrays.copyOf(y, n), m, ridge);
        assertArrayEquals(expected, got, 1e-10);
    }
}
