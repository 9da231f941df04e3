package offtape.report.locate;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealVector;

/** Takes a constant, a slope and a bend out of a course, which leaves what swings. */
final class Parabola {

    private Parabola() {}

    /** A course of even steps without its least-squares parabola. */
    static double[] removed(double[] y) {
        double[][] basis = new double[y.length][];
        for (int k = 0; k < y.length; k++) {
            double x = 2.0 * k / (y.length - 1) - 1;
            basis[k] = new double[] {1, x, x * x};
        }
        Array2DRowRealMatrix matrix = new Array2DRowRealMatrix(basis, false);
        RealVector data = new ArrayRealVector(y, false);
        RealVector fit = new QRDecomposition(matrix).getSolver().solve(data);
        return data.subtract(matrix.operate(fit)).toArray();
    }
}
