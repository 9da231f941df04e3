package offtape.report.measure.distortion;

import java.util.Arrays;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * The process of a {@link SmoothCurve} at a place between two at which its state is known, or
 * beyond the last: the expected value and how far it may lie from it.
 *
 * @param knot number of the place before
 * @param weights of value, slope and bend there and, unless it is the last, at the next place
 * @param deviation standard deviation of the value, the states being known
 */
record Bridge(int knot, double[] weights, double deviation) {

    private static final int STATE = CurveStep.STATE;

    /**
     * Lays it to a place.
     *
     * @param x places of known states, rising
     * @param place from the first of them on
     */
    static Bridge of(double[] x, double place, double stiffness) {
        int found = Arrays.binarySearch(x, place);
        if (found >= 0 || place < x[0]) {
            return new Bridge(Math.max(0, found), new double[] {1, 0, 0}, 0);
        }
        int knot = -found - 2;
        CurveStep before = new CurveStep(place - x[knot], stiffness);
        return knot + 1 == x.length
                ? beyond(knot, before)
                : between(knot, before, new CurveStep(x[knot + 1] - place, stiffness));
    }

    private static Bridge beyond(int knot, CurveStep step) {
        return new Bridge(knot, step.transition().getRow(0), step.root().getRowVector(0).getNorm());
    }

    /** The state at the place by least squares from both sides. */
    private static Bridge between(int knot, CurveStep before, CurveStep after) {
        RealMatrix fromLeft = before.whitening();
        RealMatrix toRight = after.whitening().multiply(after.transition());
        RealMatrix rows = MatrixUtils.createRealMatrix(2 * STATE, STATE);
        rows.setSubMatrix(fromLeft.getData(), 0, 0);
        rows.setSubMatrix(toRight.getData(), STATE, 0);
        // What stands on the other side of the equations, by the states left and right.
        RealMatrix known = MatrixUtils.createRealMatrix(2 * STATE, 2 * STATE);
        known.setSubMatrix(fromLeft.multiply(before.transition()).getData(), 0, 0);
        known.setSubMatrix(after.whitening().getData(), STATE, STATE);
        QRDecomposition decomposition = new QRDecomposition(rows);
        RealMatrix weights = decomposition.getSolver().solve(known);
        RealMatrix triangle = decomposition.getR().getSubMatrix(0, STATE - 1, 0, STATE - 1);
        RealVector first = MatrixUtils.createRealVector(new double[] {1, 0, 0});
        MatrixUtils.solveLowerTriangularSystem(triangle.transpose(), first);
        return new Bridge(knot, weights.getRow(0), first.getNorm());
    }
}
