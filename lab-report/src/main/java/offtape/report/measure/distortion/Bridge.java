package offtape.report.measure.distortion;

import java.util.Arrays;

/**
 * The process of a {@link SmoothCurve} at a place between two at which its state is known, or
 * beyond the last: the expected value and how far it may lie from it.
 *
 * <p>The expected course between two states has the least square of the third derivative: the
 * polynomial of fifth degree with both values, slopes and bends (Hermite's). About it the value has
 * the variance q²·s⁵·(h − s)⁵ / (20·h⁵) at a distance s into a stretch h, which near either end is
 * q²·s⁵/20, that of a state going on freely; q is the stiffness. Derived by hand; the tests hold it
 * against kriging.
 *
 * @param knot number of the place before
 * @param weights of value, slope and bend there and, unless it is the last, at the next place
 * @param deviation standard deviation of the value, the states being known
 */
record Bridge(int knot, double[] weights, double deviation) {

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
        double s = place - x[knot];
        return knot + 1 == x.length
                ? new Bridge(knot, new double[] {1, s, s * s / 2}, free(s, stiffness))
                : between(knot, s, x[knot + 1] - x[knot], stiffness);
    }

    private static Bridge between(int knot, double s, double h, double stiffness) {
        double u = s / h;
        double v = 1 - u;
        double[] weights = new double[2 * CurveStep.STATE];
        set(weights, 0, v, h);
        set(weights, CurveStep.STATE, u, -h);
        return new Bridge(knot, weights, free(s * v, stiffness));
    }

    /** The weights of a state, u being 1 at its place and 0 at the other, h towards the other. */
    private static void set(double[] weights, int at, double u, double h) {
        double v = 1 - u;
        double cube = u * u * u;
        weights[at] = cube * (1 + 3 * v + 6 * v * v);
        weights[at + 1] = h * v * cube * (1 + 3 * v);
        weights[at + 2] = h * h / 2 * v * v * cube;
    }

    private static double free(double length, double stiffness) {
        return stiffness * Math.sqrt(Math.pow(length, 5) / 20);
    }
}
