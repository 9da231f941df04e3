package offtape.report.measure.distortion;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * A smooth curve through values of known noise, with its uncertainty everywhere.
 *
 * <p>The curve is taken for one draw of a random process: a free straight line, a curvature at the
 * first place of standard deviation {@link #CURVATURE}, and a third derivative that is white noise
 * of density {@link #STIFFNESS}². Its expectation given the values is a smoothing spline of fifth
 * degree; its variance grows between values far apart and beyond the ends. Both scales are those of
 * tape: the curves in decibels of tanh and of a cubic below its turning point bend by 0.12 dB/dB²
 * at most and change their bend by 0.01 dB/dB³.
 *
 * <p>Value, slope and bend at all places are found together by least squares: each value, the bend
 * at the first place, and what the process adds from place to place ({@link CurveStep}) is one row,
 * over its standard deviation. An orthogonal decomposition takes no large numbers from each other,
 * as formulas by covariances do, which lose the uncertainty where values are known well.
 *
 * <p>Sources: G. Wahba, "Improper priors, spline smoothing and the problem of guarding against
 * model errors in regression", J. Roy. Statist. Soc. B 40 (1978); the process by its state at the
 * places C. F. Ansley and R. Kohn, "On the equivalence of two stochastic approaches to spline
 * smoothing", J. Appl. Prob. 23A (1986); the value of a place from all others by its leverage, D.
 * A. Belsley, E. Kuh, R. E. Welsch, "Regression Diagnostics" (1980), ch. 2. References from memory;
 * the tests check the formulas against direct computation.
 */
final class SmoothCurve {

    /** Standard deviation of the second derivative at the first place, dB/dB². */
    static final double CURVATURE = 0.15;

    /**
     * Root of the density of the third derivative, dB/dB^2.5: room for a gain that breaks where
     * something clips.
     */
    static final double STIFFNESS = 0.04;

    /** The same of the harmonic of tape, whose bend changes by 0.01 dB/dB³ over a step of 4 dB. */
    static final double HARMONIC_STIFFNESS = 0.02;

    private static final int STATE = CurveStep.STATE;

    private final double[] x;
    private final double[] deviation;
    private final double stiffness;

    /** Value, slope and bend at each place, one place after another. */
    private final double[] states;

    /** Lower triangle, whose transpose turns states into rows of deviation 1. */
    private final RealMatrix triangle;

    /** What no states can explain, and which rows it comes from. */
    private final RealVector rest;

    private final RealMatrix restOfRows;
    private final double scale;

    /**
     * Fits the curve.
     *
     * @param x places, rising, at least two
     * @param y values there
     * @param deviation standard deviation of each value, above 0
     */
    SmoothCurve(double[] x, double[] y, double[] deviation) {
        this(x, y, deviation, STIFFNESS);
    }

    /** The same with a third derivative of another density, its root in dB/dB^2.5. */
    SmoothCurve(double[] x, double[] y, double[] deviation, double stiffness) {
        this.x = x.clone();
        this.deviation = deviation.clone();
        this.stiffness = stiffness;
        int n = x.length;
        int unknown = STATE * n;
        QRDecomposition decomposition = new QRDecomposition(rows());
        RealMatrix turned = decomposition.getQT();
        double[] wanted = new double[turned.getColumnDimension()];
        for (int i = 0; i < n; i++) {
            wanted[i] = y[i] / deviation[i];
        }
        RealVector seen = turned.operate(new ArrayRealVector(wanted, false));
        RealMatrix upper = decomposition.getR().getSubMatrix(0, unknown - 1, 0, unknown - 1);
        triangle = upper.transpose();
        RealVector solved = seen.getSubVector(0, unknown);
        MatrixUtils.solveUpperTriangularSystem(upper, solved);
        states = solved.toArray();
        int left = wanted.length - unknown;
        rest = seen.getSubVector(unknown, left);
        restOfRows = left == 0 ? null : turned.getSubMatrix(unknown, wanted.length - 1, 0, n - 1);
        scale = Math.max(1, misfit());
    }

    /** First a row a value, then the bend at the first place, then three a step. */
    private RealMatrix rows() {
        int n = x.length;
        RealMatrix rows = new Array2DRowRealMatrix(n + 1 + STATE * (n - 1), STATE * n);
        for (int i = 0; i < n; i++) {
            rows.setEntry(i, STATE * i, 1 / deviation[i]);
        }
        rows.setEntry(n, STATE - 1, 1 / CURVATURE);
        for (int i = 0; i + 1 < n; i++) {
            CurveStep step = new CurveStep(x[i + 1] - x[i], stiffness);
            RealMatrix whitened = step.whitening();
            int row = n + 1 + STATE * i;
            rows.setSubMatrix(whitened.multiply(step.transition()).getData(), row, STATE * i);
            rows.setSubMatrix(whitened.scalarMultiply(-1).getData(), row, STATE * (i + 1));
        }
        return rows;
    }

    /** The first place. */
    double first() {
        return x[0];
    }

    /** The last place. */
    double last() {
        return x[x.length - 1];
    }

    /** The curve at a place from the first on. */
    double at(double place) {
        Bridge bridge = Bridge.of(x, place, stiffness);
        double sum = 0;
        for (int k = 0; k < bridge.weights().length; k++) {
            sum += bridge.weights()[k] * states[STATE * bridge.knot() + k];
        }
        return sum;
    }

    /** Slope of the curve, by a difference over a fiftieth. */
    double slope(double place) {
        double low = Math.max(x[0], place - 0.01);
        return (at(place + 0.01) - at(low)) / (place + 0.01 - low);
    }

    /** Standard deviation of the curve at a place, widened where the values scatter too much. */
    double deviation(double place) {
        Bridge bridge = Bridge.of(x, place, stiffness);
        RealVector weights = new ArrayRealVector(states.length);
        weights.setSubVector(STATE * bridge.knot(), new ArrayRealVector(bridge.weights(), false));
        MatrixUtils.solveLowerTriangularSystem(triangle, weights);
        return scale * Math.hypot(weights.getNorm(), bridge.deviation());
    }

    /** Each value less what the curve through all others is there; 0 if there are too few. */
    double[] strays() {
        double[] strays = new double[x.length];
        for (int i = 0; i < strays.length && restOfRows != null; i++) {
            RealVector part = restOfRows.getColumnVector(i);
            strays[i] = deviation[i] * part.dotProduct(rest) / part.dotProduct(part);
        }
        return strays;
    }

    /** Standard deviation that {@link #strays} are expected to have. */
    double[] strayDeviations() {
        double[] deviations = deviation.clone();
        for (int i = 0; i < deviations.length && restOfRows != null; i++) {
            deviations[i] /= restOfRows.getColumnVector(i).getNorm();
        }
        return deviations;
    }

    /** Root of χ² over its degrees of freedom; 0 if there are none. */
    double misfit() {
        int freedom = x.length - 2;
        return freedom < 1 ? 0 : rest.getNorm() / Math.sqrt(freedom);
    }
}
