package offtape.report.apply.model;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * Unknowns from angles that are linear in them but told up to whole turns, with what is expected of
 * the unknowns as a normal prior. Which turn is meant is found on the way up: angles are taken in
 * the order of their frequency, each nearest to what those below it let expect (a Kalman filter
 * without motion). Then all are set again to the turn that is nearest to what all of them gave, and
 * those that lie far off for their deviation count less, until nothing changes. Several ways up are
 * tried, and the one that agrees best is kept.
 */
final class TurnedFit {

    private static final double TURN = 2 * Math.PI;
    private static final int MOST_ROUNDS = 40;
    private static final double SETTLED = 1e-6;

    /** From so many deviations on an angle counts less. */
    private static final double FAR = 3;

    /** An angle whose turn is less sure than this, radians, waits for the rest. */
    private static final double MOST_UNSURE = Math.PI / 2;

    private record Angle(double hz, double[] row, double value, double deviation) {

        double expected(double[] x) {
            double sum = 0;
            for (int k = 0; k < row.length; k++) {
                sum += row[k] * x[k];
            }
            return sum;
        }

        /** How far it lies from what unknowns let expect, in deviations, by the nearest turn. */
        double off(double[] x) {
            return Math.IEEEremainder(value - expected(x), TURN) / deviation;
        }
    }

    private record Tried(double[] x, double misfit) {}

    private final double[] mean;
    private final RealMatrix covariance;
    private final RealMatrix weight;
    private final List<Angle> angles = new ArrayList<>();

    /**
     * @param mean what is expected of the unknowns
     * @param covariance of their deviations from it
     */
    TurnedFit(double[] mean, RealMatrix covariance) {
        this.mean = mean.clone();
        this.covariance = covariance;
        this.weight = new LUDecomposition(covariance).getSolver().getInverse();
    }

    /**
     * Takes an angle into account.
     *
     * @param hz the highest frequency that it depends on
     * @param row what one unit of each unknown adds to it
     * @param value radians, up to whole turns
     * @param deviation standard deviation, radians
     */
    void add(double hz, double[] row, double value, double deviation) {
        angles.add(new Angle(hz, row, value, deviation));
    }

    /**
     * The unknowns that agree best.
     *
     * @param starts what the ways up begin with, beside what is expected
     */
    double[] solve(List<double[]> starts) {
        angles.sort(Comparator.comparingDouble(Angle::hz));
        Tried best = settled(upwards(mean));
        for (double[] start : starts) {
            Tried next = settled(upwards(start));
            best = next.misfit() < best.misfit() - SETTLED ? next : best;
        }
        return best.x();
    }

    private double[] upwards(double[] start) {
        double[] x = start.clone();
        double[][] p = covariance.getData();
        for (Angle a : angles) {
            double[] gain = times(p, a.row());
            double unsure = 0;
            for (int k = 0; k < x.length; k++) {
                unsure += a.row()[k] * gain[k];
            }
            double all = unsure + a.deviation() * a.deviation();
            double off = a.deviation() * a.off(x);
            if (all > MOST_UNSURE * MOST_UNSURE || off * off > 4 * FAR * FAR * all) {
                continue;
            }
            for (int i = 0; i < x.length; i++) {
                x[i] += gain[i] * off / all;
                for (int j = 0; j < x.length; j++) {
                    p[i][j] -= gain[i] * gain[j] / all;
                }
            }
        }
        return x;
    }

    private static double[] times(double[][] matrix, double[] row) {
        double[] y = new double[row.length];
        for (int i = 0; i < y.length; i++) {
            for (int j = 0; j < row.length; j++) {
                y[i] += matrix[i][j] * row[j];
            }
        }
        return y;
    }

    private Tried settled(double[] from) {
        double[] x = from;
        double misfit = misfit(x);
        for (int round = 0; round < MOST_ROUNDS; round++) {
            double[] next = weighted(x);
            double better = misfit(next);
            if (better > misfit - SETTLED) {
                break;
            }
            x = next;
            misfit = better;
        }
        return new Tried(x, misfit);
    }

    /** One step of reweighted least squares. */
    private double[] weighted(double[] x) {
        int n = x.length;
        double[][] left = weight.getData();
        double[] right = weight.operate(mean);
        for (Angle a : angles) {
            double off = a.off(x);
            double near = a.expected(x) + a.deviation() * off;
            double w = 1 / (1 + off * off / (FAR * FAR)) / (a.deviation() * a.deviation());
            for (int i = 0; i < n; i++) {
                double scaled = w * a.row()[i];
                right[i] += scaled * near;
                for (int j = 0; scaled != 0 && j < n; j++) {
                    left[i][j] += scaled * a.row()[j];
                }
            }
        }
        return new LUDecomposition(new Array2DRowRealMatrix(left, false))
                .getSolver()
                .solve(new ArrayRealVector(right, false))
                .toArray();
    }

    /** Twice the negative logarithm of how likely it is, far angles as of Cauchy's distribution. */
    private double misfit(double[] x) {
        RealVector away = new ArrayRealVector(x).subtract(new ArrayRealVector(mean));
        double sum = away.dotProduct(weight.operate(away));
        for (Angle a : angles) {
            double off = a.off(x) / FAR;
            sum += FAR * FAR * Math.log1p(off * off);
        }
        return sum;
    }
}
