package offtape.report.measure.tape;

import java.util.List;
import java.util.stream.IntStream;

/**
 * A mean and its standard uncertainty from values in the order of time. Neighbours are joined to
 * some groups, whose means are taken for independent, so that what is slower than a value but
 * faster than a group counts as it should.
 *
 * @param mean of all values
 * @param standard standard uncertainty of the mean, widened for the few groups (Student)
 */
record Scatter(double mean, double standard) {

    private static final int MOST_GROUPS = 12;
    private static final int GROUP = 5;

    /** Half the two-sided 95 % points of Student's distribution for 2 to 12 groups. */
    private static final double[] STUDENT = {
        6.353, 2.151, 1.591, 1.388, 1.285, 1.223, 1.182, 1.153, 1.131, 1.114, 1.100
    };

    /** Of one value or more. */
    static Scatter of(double[] values) {
        int n = values.length;
        double mean = IntStream.range(0, n).mapToDouble(i -> values[i]).average().orElse(0);
        int groups = Math.min(MOST_GROUPS, Math.max(2, n / GROUP));
        if (n < 2) {
            return new Scatter(mean, Math.abs(mean));
        }
        List<Double> means =
                IntStream.range(0, groups)
                        .mapToObj(
                                g ->
                                        IntStream.range(g * n / groups, (g + 1) * n / groups)
                                                .mapToDouble(i -> values[i])
                                                .average()
                                                .orElse(mean))
                        .toList();
        double squares = means.stream().mapToDouble(m -> (m - mean) * (m - mean)).sum();
        double standard = Math.sqrt(squares / (groups - 1) / groups);
        return new Scatter(mean, STUDENT[groups - 2] * standard);
    }

    /** Expanded uncertainty, k = 2. */
    double expanded() {
        return 2 * standard;
    }
}
