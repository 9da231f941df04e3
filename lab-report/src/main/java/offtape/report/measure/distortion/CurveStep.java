package offtape.report.measure.distortion;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * What the process of a {@link SmoothCurve} does from one place to the next: value, slope and bend
 * go on as a parabola, and white noise in the third derivative adds to them.
 *
 * <p>Over a length h the noise adds integrals of white noise, whose covariances are ∫ (h−t)^a/a! ·
 * (h−t)^b/b! dt = h^(a+b+1) / (a!·b!·(a+b+1)), a and b being 2 for the value, 1 for the slope and 0
 * for the bend.
 *
 * @param length distance of the places, above 0
 * @param stiffness root of the density of the third derivative
 */
record CurveStep(double length, double stiffness) {

    /** Value, slope, bend. */
    static final int STATE = 3;

    /** Lower triangle of the covariance over a length of 1. */
    private static final RealMatrix ROOT =
            new CholeskyDecomposition(
                            new Array2DRowRealMatrix(
                                    new double[][] {
                                        {1.0 / 20, 1.0 / 8, 1.0 / 6},
                                        {1.0 / 8, 1.0 / 3, 1.0 / 2},
                                        {1.0 / 6, 1.0 / 2, 1}
                                    }))
                    .getL();

    private static final RealMatrix ROOT_INVERSE = MatrixUtils.inverse(ROOT);

    /** How a state goes on without noise. */
    RealMatrix transition() {
        return new Array2DRowRealMatrix(
                new double[][] {{1, length, length * length / 2}, {0, 1, length}, {0, 0, 1}});
    }

    /** Turns the noise of a state into three independent values of deviation 1. */
    RealMatrix whitening() {
        double[] inverse = scales();
        for (int i = 0; i < STATE; i++) {
            inverse[i] = 1 / inverse[i];
        }
        return ROOT_INVERSE.multiply(MatrixUtils.createRealDiagonalMatrix(inverse));
    }

    private double[] scales() {
        double root = stiffness * Math.sqrt(length);
        return new double[] {root * length * length, root * length, root};
    }
}
