package offtape.core.machine;

/**
 * A smooth function of time from its values and slopes at even steps, by cubic Hermite
 * interpolation: for a sine of θ radians a step the error is at most θ⁴/384 of its peak. Outside
 * the table the function goes on straight, or the table repeats.
 */
final class HermiteTable {

    private final double originSeconds;
    private final double rateHz;
    private final double[] values;
    private final double[] slopes;
    private final boolean periodic;

    /**
     * Takes the arrays over.
     *
     * @param originSeconds time of the first value
     * @param rateHz values a second
     * @param values the function, at least two values
     * @param slopes its derivative by time, same length
     * @param periodic whether the table, whose length is then a power of two, repeats after its
     *     last value
     */
    HermiteTable(
            double originSeconds,
            double rateHz,
            double[] values,
            double[] slopes,
            boolean periodic) {
        this.originSeconds = originSeconds;
        this.rateHz = rateHz;
        this.values = values;
        this.slopes = slopes;
        this.periodic = periodic;
    }

    double value(double seconds) {
        double steps = (seconds - originSeconds) * rateHz;
        int left = left(steps);
        double x = steps - left;
        int i = wrapped(left);
        int j = wrapped(left + 1);
        double m0 = slopes[i] / rateHz;
        double m1 = slopes[j] / rateHz;
        if (!periodic && (x < 0 || x > 1)) {
            return x < 0 ? values[i] + m0 * x : values[j] + m1 * (x - 1);
        }
        double rise = values[j] - values[i];
        return values[i] + x * (m0 + x * (3 * rise - 2 * m0 - m1 + x * (m0 + m1 - 2 * rise)));
    }

    /** The derivative by time, of the interpolant itself. */
    double slope(double seconds) {
        double steps = (seconds - originSeconds) * rateHz;
        int left = left(steps);
        double x = steps - left;
        int i = wrapped(left);
        int j = wrapped(left + 1);
        if (!periodic && (x < 0 || x > 1)) {
            return x < 0 ? slopes[i] : slopes[j];
        }
        double m0 = slopes[i] / rateHz;
        double m1 = slopes[j] / rateHz;
        double rise = values[j] - values[i];
        double curve = m0 + x * (6 * rise - 4 * m0 - 2 * m1 + 3 * x * (m0 + m1 - 2 * rise));
        return curve * rateHz;
    }

    /** Largest magnitude of the interpolant's slope, between the tabulated points as well. */
    double steepest() {
        double most = 0;
        int stretches = periodic ? values.length : values.length - 1;
        for (int i = 0; i < stretches; i++) {
            int j = wrapped(i + 1);
            double rise = values[j] - values[i];
            most = Math.max(most, steepest(slopes[i] / rateHz, slopes[j] / rateHz, rise));
        }
        return most * rateHz;
    }

    /** Largest slope of a stretch from its slopes at both ends and its rise, all a step. */
    private static double steepest(double m0, double m1, double rise) {
        // the mean is no more than the most, but does not get lost if it is no number
        double ends = Math.max(Math.abs(rise), Math.max(Math.abs(m0), Math.abs(m1)));
        double bent = 3 * (m0 + m1 - 2 * rise);
        double begin = 6 * rise - 4 * m0 - 2 * m1;
        double turn = -begin / (2 * bent);
        return turn > 0 && turn < 1 ? Math.max(ends, Math.abs(m0 + begin * turn / 2)) : ends;
    }

    private int left(double steps) {
        int floor = (int) Math.floor(steps);
        return periodic ? floor : Math.max(0, Math.min(values.length - 2, floor));
    }

    private int wrapped(int index) {
        return periodic ? index & (values.length - 1) : index;
    }
}
