package offtape.report.measure.sweep;

import org.apache.commons.math3.fitting.PolynomialCurveFitter;
import org.apache.commons.math3.fitting.WeightedObservedPoints;

/**
 * The value and scatter of a noisy curve at one place, from a parabola through the points around
 * it: slope and curvature of the curve do not bias it as they would a plain mean.
 *
 * @param value value of the parabola at the place
 * @param standardError standard error of the value, from the scatter about the parabola
 * @param slope slope of the parabola at the place
 */
record LocalFit(double value, double standardError, double slope) {

    /**
     * A parabola's value in the middle of evenly spread points varies so many times as much as
     * their mean (Savitzky and Golay 1964, quadratic smoothing).
     */
    static final double WIDENING = 2.25;

    private static final int FEWEST = 5;

    /**
     * Fits the points that are finite within a reach.
     *
     * @param x places, rising
     * @param y values; those that are not finite are left out
     * @param at the place wanted
     * @param reach how far to either side points count
     * @return null if there are fewer than five points, or none on one side
     */
    static LocalFit at(double[] x, double[] y, double at, double reach) {
        WeightedObservedPoints points = new WeightedObservedPoints();
        int count = 0;
        boolean below = false;
        boolean above = false;
        for (int i = 0; i < x.length; i++) {
            double d = (x[i] - at) / reach;
            if (Math.abs(d) <= 1.0001 && Double.isFinite(y[i])) {
                points.add(d, y[i]);
                count++;
                below |= d <= 1e-9;
                above |= d >= -1e-9;
            }
        }
        if (count < FEWEST || !below || !above) {
            return null;
        }
        double[] p = PolynomialCurveFitter.create(2).fit(points.toList());
        double sum = 0;
        for (int i = 0; i < x.length; i++) {
            double d = (x[i] - at) / reach;
            if (Math.abs(d) <= 1.0001 && Double.isFinite(y[i])) {
                double rest = y[i] - p[0] - d * (p[1] + d * p[2]);
                sum += rest * rest;
            }
        }
        double variance = sum / (count - 3) * WIDENING / count;
        return new LocalFit(p[0], Math.sqrt(variance), p[1] / reach);
    }
}
