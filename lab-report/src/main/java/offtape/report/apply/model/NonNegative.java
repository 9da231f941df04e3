package offtape.report.apply.model;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * Least squares with unknowns that are not negative. Lawson and Hanson, "Solving Least Squares
 * Problems", 1974, chapter 23.
 */
final class NonNegative {

    private static final double SMALL = 1e-9;

    /** Columns may be nearly alike: a trace on the diagonal keeps the solution finite. */
    private static final double RIDGE = 1e-11;

    private final RealMatrix normal;
    private final RealVector right;
    private final int n;

    private NonNegative(double[][] rows, double[] values) {
        RealMatrix a = new Array2DRowRealMatrix(rows, false);
        normal = a.transpose().multiply(a);
        right = a.transpose().operate(new ArrayRealVector(values, false));
        n = rows[0].length;
    }

    /** The unknowns that leave the least sum of squares. */
    static double[] solve(double[][] rows, double[] values) {
        return new NonNegative(rows, values).solve();
    }

    private double[] solve() {
        double[] x = new double[n];
        List<Integer> free = new ArrayList<>();
        double scale = Math.max(1e-300, right.getLInfNorm());
        for (int round = 0; round < 3 * n; round++) {
            int best = steepest(x, free, SMALL * scale);
            if (best < 0) {
                return x;
            }
            free.add(best);
            settle(x, free);
        }
        return x;
    }

    private int steepest(double[] x, List<Integer> free, double least) {
        RealVector slope = right.subtract(normal.operate(new ArrayRealVector(x)));
        int best = -1;
        for (int j = 0; j < n; j++) {
            boolean steeper = slope.getEntry(j) > (best < 0 ? least : slope.getEntry(best));
            best = !free.contains(j) && steeper ? j : best;
        }
        return best;
    }

    /** Moves to the best point of the free unknowns; those that would turn negative are bound. */
    private void settle(double[] x, List<Integer> free) {
        while (!free.isEmpty()) {
            double[] z = unbound(free);
            double step = 1;
            for (int k = 0; k < z.length; k++) {
                double now = x[free.get(k)];
                if (z[k] <= 0) {
                    step = Math.min(step, now / Math.max(now - z[k], 1e-300));
                }
            }
            for (int k = 0; k < z.length; k++) {
                x[free.get(k)] += step * (z[k] - x[free.get(k)]);
            }
            if (step == 1) {
                return;
            }
            free.removeIf(j -> x[j] <= 1e-12);
            for (int j = 0; j < n; j++) {
                x[j] = free.contains(j) ? x[j] : 0;
            }
        }
    }

    private double[] unbound(List<Integer> free) {
        int[] chosen = free.stream().mapToInt(Integer::intValue).toArray();
        RealMatrix part = normal.getSubMatrix(chosen, chosen);
        RealVector value = new ArrayRealVector(chosen.length);
        for (int k = 0; k < chosen.length; k++) {
            value.setEntry(k, right.getEntry(chosen[k]));
        }
        for (int k = 0; k < chosen.length; k++) {
            part.multiplyEntry(k, k, 1 + RIDGE);
        }
        return new LUDecomposition(part, 0).getSolver().solve(value).toArray();
    }
}
