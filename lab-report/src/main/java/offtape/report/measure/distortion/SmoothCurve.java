package offtape.report.measure.distortion;

import java.util.Arrays;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.LUDecomposition;
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
 * <p>Sources: G. Wahba, "Improper priors, spline smoothing and the problem of guarding against
 * model errors in regression", J. Roy. Statist. Soc. B 40 (1978); for the value of a place from all
 * others O. Dubrule, "Cross validation of kriging in a unique neighborhood", Math. Geology 15
 * (1983). References from memory; the tests check the formulas against direct computation.
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

    private final double[] x;
    private final double[] y;
    private final RealMatrix inverse;
    private final RealMatrix basis;
    private final RealMatrix trendCovariance;
    private final RealMatrix projected;
    private final RealVector weights;
    private final double[] trend;
    private final double scale;
    private final double stiffness;

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
        this.stiffness = stiffness;
        this.x = x.clone();
        this.y = y.clone();
        int n = x.length;
        RealMatrix k = new Array2DRowRealMatrix(n, n);
        basis = new Array2DRowRealMatrix(n, 2);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                k.setEntry(i, j, covariance(x[i], x[j]));
            }
            k.addToEntry(i, i, deviation[i] * deviation[i]);
            basis.setRow(i, new double[] {1, x[i] - x[0]});
        }
        inverse = new CholeskyDecomposition(k, 1e-9, 0).getSolver().getInverse();
        RealMatrix weighted = inverse.multiply(basis);
        RealMatrix normal = basis.transpose().multiply(weighted);
        trendCovariance = new LUDecomposition(normal).getSolver().getInverse();
        projected =
                inverse.subtract(weighted.multiply(trendCovariance).multiply(weighted.transpose()));
        RealVector values = new ArrayRealVector(y);
        trend = trendCovariance.operate(weighted.transpose().operate(values)).toArray();
        weights = inverse.operate(values.subtract(basis.operate(new ArrayRealVector(trend))));
        scale = Math.max(1, misfit());
    }

    private double covariance(double a, double b) {
        double s = Math.min(a, b) - x[0];
        double d = Math.abs(a - b);
        double wiener = Math.pow(s, 5) / 20 + d * Math.pow(s, 4) / 8 + d * d * s * s * s / 12;
        double bend = s * s * (s + d) * (s + d) / 4;
        return stiffness * stiffness * wiener + CURVATURE * CURVATURE * bend;
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
        double sum = trend[0] + trend[1] * (place - x[0]);
        for (int i = 0; i < x.length; i++) {
            sum += weights.getEntry(i) * covariance(x[i], place);
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
        RealVector c =
                new ArrayRealVector(Arrays.stream(x).map(v -> covariance(v, place)).toArray());
        RealVector solved = inverse.operate(c);
        RealVector rest =
                new ArrayRealVector(new double[] {1, place - x[0]})
                        .subtract(basis.transpose().operate(solved));
        double variance =
                covariance(place, place)
                        - c.dotProduct(solved)
                        + rest.dotProduct(trendCovariance.operate(rest));
        return scale * Math.sqrt(Math.max(0, variance));
    }

    /** Each value less what the curve through all others is there. */
    double[] strays() {
        double[] by = projected.operate(y);
        double[] stray = new double[x.length];
        for (int i = 0; i < stray.length; i++) {
            stray[i] = by[i] / projected.getEntry(i, i);
        }
        return stray;
    }

    /** Standard deviation that {@link #strays} are expected to have. */
    double[] strayDeviations() {
        double[] deviations = new double[x.length];
        for (int i = 0; i < deviations.length; i++) {
            deviations[i] = 1 / Math.sqrt(projected.getEntry(i, i));
        }
        return deviations;
    }

    /** Root of χ² over its degrees of freedom; 0 if there are none. */
    double misfit() {
        int freedom = x.length - 2;
        double chiSquare =
                new ArrayRealVector(y).dotProduct(projected.operate(new ArrayRealVector(y)));
        return freedom < 1 ? 0 : Math.sqrt(Math.max(0, chiSquare) / freedom);
    }
}
