package offtape.report.measure.loss;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * How the errors of a curve hang together over frequency, as the matrix that makes them
 * independent: noise has each point its own; what filters leave runs together over half an octave;
 * what no cause explains (unevenness of a real machine) over a third of an octave.
 */
final class Covariance {

    private static final double OWN_OCTAVES = 0.5;
    private static final double MISFIT_OCTAVES = 1.0 / 3;

    /** Share of an unevenness that changes from point to point. */
    private static final double FINE_SHARE = 0.1;

    private final double[][] whitening;

    private Covariance(double[][] whitening) {
        this.whitening = whitening;
    }

    /**
     * The covariance of a curve.
     *
     * @param misfitDb standard deviation of what no cause explains, dB
     */
    static Covariance of(LossCurve curve, double misfitDb) {
        int n = curve.size();
        double own = LossCurve.OWN_DB * LossCurve.OWN_DB;
        double[][] c = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                double octaves = Math.log(curve.hz()[i] / curve.hz()[j]) / Math.log(2);
                c[i][j] =
                        own * likeness(octaves / OWN_OCTAVES)
                                + misfitDb * misfitDb * likeness(octaves / MISFIT_OCTAVES);
                c[j][i] = c[i][j];
            }
            c[i][i] += curve.noiseDb()[i] * curve.noiseDb()[i];
            c[i][i] += FINE_SHARE * misfitDb * misfitDb;
        }
        RealMatrix lower = new CholeskyDecomposition(new Array2DRowRealMatrix(c, false)).getL();
        double[][] inverse = MatrixUtils.createRealIdentityMatrix(n).getData();
        for (int column = 0; column < n; column++) {
            for (int row = column; row < n; row++) {
                double sum = inverse[row][column];
                for (int k = column; k < row; k++) {
                    sum -= lower.getEntry(row, k) * inverse[k][column];
                }
                inverse[row][column] = sum / lower.getEntry(row, row);
            }
        }
        return new Covariance(inverse);
    }

    private static double likeness(double distance) {
        return Math.exp(-distance * distance / 2);
    }

    /** Values whose errors would be independent with standard deviation 1. */
    double[] whiten(double[] values) {
        double[] out = new double[values.length];
        for (int i = 0; i < out.length; i++) {
            double sum = 0;
            for (int j = 0; j <= i; j++) {
                sum += whitening[i][j] * values[j];
            }
            out[i] = sum;
        }
        return out;
    }
}
