package offtape.report.apply.correct;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;

/** A parabola through weighted points by least squares, of which the middle is wanted. */
final class LocalParabola {

    private static final int FEWEST = 4;

    private final double[] moments = new double[5];
    private final double[] products = new double[3];
    private int points;

    void add(double x, double y, double weight) {
        double power = weight;
        for (int i = 0; i < moments.length; i++) {
            moments[i] += power;
            if (i < products.length) {
                products[i] += power * y;
            }
            power *= x;
        }
        points++;
    }

    /** The parabola at x = 0, or what is given if too few points tell one. */
    double valueAtZero(double otherwise) {
        if (points < FEWEST) {
            return otherwise;
        }
        double[][] rows = new double[3][3];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                rows[i][j] = moments[i + j];
            }
        }
        LUDecomposition lu = new LUDecomposition(new Array2DRowRealMatrix(rows));
        return lu.getSolver().isNonSingular()
                ? lu.getSolver().solve(new ArrayRealVector(products)).getEntry(0)
                : otherwise;
    }
}
