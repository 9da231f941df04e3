package offtape.report.fault.symptom;

import java.util.Optional;
import java.util.function.Function;
import offtape.core.unit.Quantity;
import offtape.report.headline.Find;

/**
 * A figure of both channels: what they share and in what they differ.
 *
 * @param left of the left channel, or null if it is not known
 * @param right of the right channel, or null
 */
record Pair(Quantity left, Quantity right) {

    /** The figure of each channel, where it is known. */
    static Pair of(Function<String, Optional<Quantity>> figure) {
        return new Pair(known(figure, 0), known(figure, 1));
    }

    private static Quantity known(Function<String, Optional<Quantity>> figure, int channel) {
        return figure.apply(Find.CHANNELS.get(channel)).filter(Quantity::isKnown).orElse(null);
    }

    /** The mean of both goes to one symptom, right less left to the other. */
    void put(Symptoms to, Symptom common, Symptom difference) {
        if (left != null && right != null) {
            double sigma = Math.hypot(left.uncertainty(), right.uncertainty()) / 2;
            to.put(common, (left.value() + right.value()) / 2, sigma / 2);
            if (difference != null) {
                to.put(difference, right.value() - left.value(), sigma);
            }
        } else {
            to.put(common, left == null ? right : left);
        }
    }

    /** The larger of both goes to a symptom. */
    void putLarger(Symptoms to, Symptom larger) {
        if (left != null && right != null) {
            to.put(larger, left.value() > right.value() ? left : right);
        } else {
            to.put(larger, left == null ? right : left);
        }
    }
}
