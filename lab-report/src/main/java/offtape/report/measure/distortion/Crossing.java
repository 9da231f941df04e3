package offtape.report.measure.distortion;

import org.apache.commons.math3.analysis.polynomials.PolynomialFunctionLagrangeForm;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * Where a measured curve first rises through a value, by a cubic through the four points around (a
 * parabola through three in the first and last interval).
 *
 * @param x place of the crossing
 * @param slope slope of the curve between the points to either side
 * @param index the point before the crossing
 */
record Crossing(double x, double slope, int index) {

    /**
     * Finds the crossing.
     *
     * @param x places, rising, at least two
     * @param y values, as many
     * @return null if the curve does not rise through the value
     */
    static Crossing rising(double[] x, double[] y, double value) {
        for (int i = 0; i + 1 < x.length; i++) {
            if (y[i] < value && y[i + 1] >= value) {
                PolynomialFunctionLagrangeForm cubic = around(x, y, i);
                double at =
                        new BrentSolver(1e-9)
                                .solve(200, v -> cubic.value(v) - value, x[i], x[i + 1]);
                return new Crossing(at, (y[i + 1] - y[i]) / (x[i + 1] - x[i]), i);
            }
        }
        return null;
    }

    /** The value of the curve at a place within it. */
    static double valueAt(double[] x, double[] y, double at) {
        int i = 0;
        while (i + 2 < x.length && x[i + 1] < at) {
            i++;
        }
        return around(x, y, i).value(at);
    }

    private static PolynomialFunctionLagrangeForm around(double[] x, double[] y, int i) {
        int from = Math.max(0, i - 1);
        int to = Math.min(x.length, i + 3);
        return new PolynomialFunctionLagrangeForm(
                java.util.Arrays.copyOfRange(x, from, to),
                java.util.Arrays.copyOfRange(y, from, to));
    }
}
