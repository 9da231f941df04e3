package offtape.report.measure.loss;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Collectors;
import org.apache.commons.math3.exception.MathIllegalStateException;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresOptimizer.Optimum;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresProblem.Evaluation;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.util.Pair;

/** Least squares of a set of causes and an offset on whitened residuals. */
final class SetFitter {

    /** A fall of χ² that matters no more. */
    private static final double SETTLED = 1e-3;

    private static final int MOST_STEPS = 25;
    private static final int MOST_EVALUATIONS = 200;
    private static final double RIDGE = 1e-9;

    private final LossCurve curve;
    private final Covariance covariance;
    private final Witness witness;
    private final double[] measured;
    private final double[] offset;
    private final double[] none;
    private final Map<Shelf, double[]> shelves;

    /**
     * @param shelves that sets may hold
     * @param witness of azimuth, or null
     */
    SetFitter(LossCurve curve, Covariance covariance, List<Shelf> shelves, Witness witness) {
        this.curve = curve;
        this.covariance = covariance;
        this.witness = witness;
        this.measured = covariance.whiten(curve.db());
        this.offset = covariance.whiten(at(hz -> 1));
        this.none = new double[curve.size()];
        this.shelves =
                shelves.stream()
                        .collect(Collectors.toMap(s -> s, s -> covariance.whiten(at(s::db))));
    }

    /**
     * The fits of a set: one, or two where a gap and azimuth, whose curves are almost the same, may
     * have changed places; the second starts from where the witness has azimuth.
     *
     * @param penalty added to χ²
     * @param near a fit of fewer or more causes to start from, or null
     */
    List<SetFit> fit(CauseSet set, double penalty, SetFit near) {
        double[] start = new double[set.terms().size() + 1];
        for (int i = 0; i < start.length - 1; i++) {
            LossTerm t = set.terms().get(i);
            int there = near == null ? -1 : near.set().terms().indexOf(t);
            boolean known = there >= 0 && t.cause() != Cause.AZIMUTH;
            start[i] = known ? near.theta()[there] : first(t);
        }
        start[start.length - 1] = near == null ? 0 : near.offsetDb();
        List<SetFit> fits = new ArrayList<>(from(start, set, penalty).stream().toList());
        int gap = set.index(Cause.GAP);
        int azimuth = set.index(Cause.AZIMUTH);
        if (gap >= 0 && azimuth >= 0 && !fits.isEmpty()) {
            double[] again = Arrays.copyOf(fits.get(0).theta(), start.length);
            again[start.length - 1] = fits.get(0).offsetDb();
            double told = witness.productUm();
            again[gap] += again[azimuth] * again[azimuth] - told * told;
            again[azimuth] = told;
            from(again, set, penalty).ifPresent(fits::add);
        }
        return fits;
    }

    private double first(LossTerm term) {
        return term.cause() == Cause.AZIMUTH ? witness.productUm() : term.start();
    }

    private Optional<SetFit> from(double[] start, CauseSet set, double penalty) {
        try {
            Optimum found =
                    new LevenbergMarquardtOptimizer()
                            .optimize(
                                    new LeastSquaresBuilder()
                                            .start(start)
                                            .model(point -> valueAndSlopes(set, point))
                                            .target(new double[rows(set)])
                                            .maxEvaluations(MOST_EVALUATIONS)
                                            .maxIterations(MOST_EVALUATIONS)
                                            .checker(SetFitter::settled)
                                            .build());
            return Optional.of(finished(set, found, penalty));
        } catch (MathIllegalStateException e) {
            return Optional.empty();
        }
    }

    /** Whether χ² no longer falls, or has done so long enough along a valley of like causes. */
    private static boolean settled(int step, Evaluation before, Evaluation after) {
        double fall = before.getCost() * before.getCost() - after.getCost() * after.getCost();
        return step >= MOST_STEPS || Math.abs(fall) < SETTLED;
    }

    private int rows(CauseSet set) {
        return curve.size() + (set.causes().contains(Cause.AZIMUTH) ? 1 : 0);
    }

    /** Whitened model less measured, the witness in a row of its own. */
    private Pair<RealVector, RealMatrix> valueAndSlopes(CauseSet set, RealVector point) {
        int n = curve.size();
        int terms = set.terms().size();
        double[] rest = new double[rows(set)];
        double[][] slopes = new double[rest.length][terms + 1];
        double[] whole = new double[n];
        put(slopes, terms, offset);
        for (int k = 0; k < terms; k++) {
            LossTerm term = set.terms().get(k);
            double theta = point.getEntry(k);
            put(slopes, k, slope(term, theta));
            for (int i = 0; i < n; i++) {
                whole[i] += term.db(theta, curve.hz()[i]);
            }
            if (term.cause() == Cause.AZIMUTH) {
                rest[n] = witness.off(theta);
                slopes[n][k] = 1 / witness.deviationUm();
            }
        }
        double[] white = covariance.whiten(whole);
        double[] shelf = set.shelf() == null ? none : shelves.get(set.shelf());
        for (int i = 0; i < n; i++) {
            rest[i] = white[i] + shelf[i] + point.getEntry(terms) * offset[i] - measured[i];
        }
        return Pair.create(
                new ArrayRealVector(rest, false), new Array2DRowRealMatrix(slopes, false));
    }

    private double[] slope(LossTerm term, double theta) {
        return covariance.whiten(at(hz -> term.slope(theta, hz)));
    }

    private double[] at(DoubleUnaryOperator db) {
        return Arrays.stream(curve.hz()).map(db).toArray();
    }

    /** Standard deviation of how many times its shelf a fitted set holds, once. */
    double shelfDeviation(SetFit fit) {
        int n = curve.size();
        int terms = fit.theta().length;
        double[][] slopes = new double[n][terms + 2];
        put(slopes, terms + 1, shelves.get(fit.set().shelf()));
        put(slopes, terms, offset);
        for (int k = 0; k < terms; k++) {
            put(slopes, k, slope(fit.set().terms().get(k), fit.theta()[k]));
        }
        RealMatrix j = new Array2DRowRealMatrix(slopes, false);
        RealMatrix information = j.transpose().multiply(j);
        double[][] c = new LUDecomposition(information, 0).getSolver().getInverse().getData();
        return Math.sqrt(Math.abs(c[terms + 1][terms + 1]));
    }

    /** Correlation of two parameters if these two and an offset alone were fitted. */
    double correlation(LossTerm one, double oneTheta, LossTerm other, double otherTheta) {
        double[] a = withoutOffset(slope(one, oneTheta));
        double[] b = withoutOffset(slope(other, otherTheta));
        return -dot(a, b) / Math.sqrt(dot(a, a) * dot(b, b));
    }

    private double[] withoutOffset(double[] column) {
        double share = dot(column, offset) / dot(offset, offset);
        double[] out = new double[column.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = column[i] - share * offset[i];
        }
        return out;
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }

    private static void put(double[][] matrix, int column, double[] values) {
        for (int i = 0; i < values.length; i++) {
            matrix[i][column] = values[i];
        }
    }

    private static SetFit finished(CauseSet set, Optimum found, double penalty) {
        int terms = set.terms().size();
        double[] point = found.getPoint().toArray();
        double misfit = found.getResiduals().dotProduct(found.getResiduals());
        return new SetFit(
                set,
                Arrays.copyOf(point, terms),
                covariance(found.getJacobian()),
                point[terms],
                misfit + penalty);
    }

    /**
     * Covariance of the parameters, the offset's left out. Where two are all but one, theirs is
     * kept finite: 30 000 times what each alone would have.
     */
    private static double[][] covariance(RealMatrix slopes) {
        RealMatrix information = slopes.transpose().multiply(slopes);
        int n = information.getColumnDimension();
        double[] scale = new double[n];
        for (int i = 0; i < n; i++) {
            scale[i] = 1 / Math.sqrt(Math.max(Double.MIN_NORMAL, information.getEntry(i, i)));
        }
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                information.multiplyEntry(i, j, scale[i] * scale[j]);
            }
            information.addToEntry(i, i, RIDGE);
        }
        double[][] inverse = new LUDecomposition(information, 0).getSolver().getInverse().getData();
        double[][] covariance = new double[n - 1][n - 1];
        for (int i = 0; i < n - 1; i++) {
            for (int j = 0; j < n - 1; j++) {
                covariance[i][j] = (inverse[i][j] + inverse[j][i]) / 2 * scale[i] * scale[j];
            }
        }
        return covariance;
    }
}
