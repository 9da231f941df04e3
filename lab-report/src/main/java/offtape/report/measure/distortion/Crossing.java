package offtape.report.measure.distortion;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/** Where a smooth curve rises through a value, and where it is highest. */
final class Crossing {

    private static final double STEP_DB = 0.05;

    private Crossing() {}

    /**
     * The first place where a curve rises through a value.
     *
     * @param curve over record level in dB
     * @param from where to begin
     * @param to where to end
     * @return NaN if it does not
     */
    static double rising(DoubleUnaryOperator curve, double from, double to, double value) {
        double last = from;
        while (last < to) {
            double next = Math.min(to, last + STEP_DB);
            if (curve.applyAsDouble(last) < value && curve.applyAsDouble(next) >= value) {
                return new BrentSolver(1e-9)
                        .solve(200, x -> curve.applyAsDouble(x) - value, last, next);
            }
            last = next;
        }
        return Double.NaN;
    }

    /** The place where a curve is highest, within a twentieth of a decibel. */
    static double highest(DoubleUnaryOperator curve, double from, double to) {
        double best = from;
        for (double x = from; x < to; x += STEP_DB) {
            best = curve.applyAsDouble(x) > curve.applyAsDouble(best) ? x : best;
        }
        return curve.applyAsDouble(to) >= curve.applyAsDouble(best) ? to : best;
    }
}
