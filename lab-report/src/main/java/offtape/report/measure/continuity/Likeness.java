package offtape.report.measure.continuity;

import java.util.Optional;

/** Where a short series is most like a part of a longer one, whatever the size and offset. */
final class Likeness {

    /** A series that varies by less than a thousandth of its size has no shape. */
    private static final double LEVEL = 1e-6;

    private final double[] correlation;

    /**
     * Pearson's coefficient at every place.
     *
     * @param shape what is looked for
     * @param around where, longer
     */
    Likeness(double[] shape, double[] around) {
        double[] ours = shape.clone();
        double mean = 0;
        for (double v : ours) {
            mean += v / ours.length;
        }
        double power = 0;
        for (int i = 0; i < ours.length; i++) {
            ours[i] -= mean;
            power += ours[i] * ours[i];
        }
        correlation = new double[around.length - ours.length + 1];
        for (int k = 0; k < correlation.length; k++) {
            double sum = 0;
            double squares = 0;
            double product = 0;
            for (int i = 0; i < ours.length; i++) {
                double v = around[k + i];
                sum += v;
                squares += v * v;
                product += v * ours[i];
            }
            double variance = squares - sum * sum / ours.length;
            // the difference of two large sums leaves nothing but rounding where all is level
            boolean level = variance <= LEVEL * squares;
            double scale = Math.sqrt(power * variance);
            correlation[k] = level || power <= 0 ? 0 : product / scale;
        }
    }

    /** The place between two steps, or empty if it is nowhere as alike as that. */
    Optional<Double> best(double least) {
        int best = 0;
        for (int k = 1; k < correlation.length; k++) {
            if (correlation[k] > correlation[best]) {
                best = k;
            }
        }
        if (best == 0 || best == correlation.length - 1 || correlation[best] < least) {
            return Optional.empty();
        }
        double before = correlation[best - 1];
        double after = correlation[best + 1];
        // the first of the highest is higher than what lies before it, so there is a bend
        double bend = before - 2 * correlation[best] + after;
        return Optional.of(best + (before - after) / (2 * bend));
    }
}
