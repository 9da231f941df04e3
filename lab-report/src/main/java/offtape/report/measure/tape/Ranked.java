package offtape.report.measure.tape;

import java.util.Arrays;

/** Values by their rank, which a few wild ones do not move. */
final class Ranked {

    private Ranked() {}

    /** The value under which a share of all lies; at least one value. */
    static double at(double share, double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[(int) Math.min(sorted.length - 1.0, share * sorted.length)];
    }

    static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return 0.5 * (sorted[(sorted.length - 1) / 2] + sorted[sorted.length / 2]);
    }

    /** Distance of the quartiles. */
    static double middleHalf(double[] values) {
        return at(0.75, values) - at(0.25, values);
    }
}
