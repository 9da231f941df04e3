package offtape.core.standard;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;

/**
 * A curve through given points that is smooth (continuous slope) and does not swing over between
 * them: piecewise cubic, slopes after Fritsch and Butland, SIAM J. Sci. Stat. Comput. 5 (1984),
 * 300-304. Outside the points the last slope goes on as a straight line.
 */
final class MonotoneCubic implements DoubleUnaryOperator {

    private final double[] x;
    private final double[] y;
    private final double[] slope;

    /** Points in rising order of x, at least three. */
    MonotoneCubic(double[] x, double[] y) {
        this.x = x.clone();
        this.y = y.clone();
        this.slope = slopes(x, y);
    }

    @Override
    public double applyAsDouble(double at) {
        int last = x.length - 1;
        if (at <= x[0]) {
            return y[0] + slope[0] * (at - x[0]);
        }
        if (at >= x[last]) {
            return y[last] + slope[last] * (at - x[last]);
        }
        int found = Arrays.binarySearch(x, at);
        return within(found >= 0 ? found : -found - 2, at);
    }

    private double within(int i, double at) {
        double h = x[i + 1] - x[i];
        double t = (at - x[i]) / h;
        double u = 1 - t;
        return y[i] * u * u * (1 + 2 * t)
                + y[i + 1] * t * t * (3 - 2 * t)
                + h * t * u * (slope[i] * u - slope[i + 1] * t);
    }

    private static double[] slopes(double[] x, double[] y) {
        int n = x.length;
        double[] chord = new double[n - 1];
        for (int i = 0; i < n - 1; i++) {
            chord[i] = (y[i + 1] - y[i]) / (x[i + 1] - x[i]);
        }
        double[] slope = new double[n];
        slope[0] = chord[0];
        slope[n - 1] = chord[n - 2];
        for (int i = 1; i < n - 1; i++) {
            slope[i] = between(chord[i - 1], chord[i], x[i] - x[i - 1], x[i + 1] - x[i]);
        }
        return slope;
    }

    /** Weighted harmonic mean of two chords, 0 at an extreme. */
    private static double between(double left, double right, double leftWidth, double rightWidth) {
        if (left * right <= 0) {
            return 0;
        }
        double a = leftWidth + 2 * rightWidth;
        double b = 2 * leftWidth + rightWidth;
        return (a + b) / (a / left + b / right);
    }
}
