package offtape.report.measure.transport;

/**
 * Undoes y(i) = x(i) − x(i − m) for a stretch, with what lies before it unknown: the x that
 * minimises Σ (y(i) − x(i) + x(i − m))² + ridge·Σ x(i)².
 *
 * <p>Every m-th value hangs together with its neighbours only, so there are m chains of unknowns,
 * each with a tridiagonal system of its own, solved exactly in one sweep forth and back (a Kalman
 * smoother whose state is a single number). The ends of the stretch are thereby treated exactly.
 * With a ridge of 0 the sums of each chain are what they must be but for one constant a chain,
 * which is chosen so that the chain's mean is 0: of a stretch of K chains' length 1/K of the power
 * is not seen.
 */
final class LatticeInverse {

    private LatticeInverse() {}

    /**
     * The solution.
     *
     * @param y differences
     * @param m lag, 1 or more
     * @param ridge 0 or more
     * @return as many values as {@code y}
     */
    static double[] solve(double[] y, int m, double ridge) {
        double[] x = new double[y.length];
        int longest = (y.length + m - 1) / m + 1;
        double[] share = new double[longest];
        double[] value = new double[longest];
        for (int first = 0; first < Math.min(m, y.length); first++) {
            chain(y, x, first, m, Math.max(ridge, 1e-12), share, value);
        }
        return x;
    }

    /** Unknowns u₀ … u_K with differences y₁ … y_K between neighbours, by Thomas's elimination. */
    private static void chain(
            double[] y,
            double[] x,
            int first,
            int m,
            double ridge,
            double[] share,
            double[] value) {
        int count = (y.length - first + m - 1) / m;
        double diagonal = 1 + ridge;
        share[0] = 1 / diagonal;
        value[0] = -y[first] / diagonal;
        for (int k = 1; k <= count; k++) {
            double here = y[first + (k - 1) * m];
            double next = k < count ? y[first + k * m] : 0;
            double pivot = (k < count ? 2 : 1) + ridge - share[k - 1];
            share[k] = 1 / pivot;
            value[k] = (here - next + value[k - 1]) / pivot;
        }
        double u = value[count];
        x[first + (count - 1) * m] = u;
        for (int k = count - 1; k >= 1; k--) {
            u = value[k] + share[k] * u;
            x[first + (k - 1) * m] = u;
        }
    }
}
