package offtape.report.measure.channel;

/**
 * Fills the valleys of a curve that are narrower than a width: the morphological closing, the
 * lowest of the highest values around. Slopes and slow waves stay as they are.
 */
final class Valleys {

    private Valleys() {}

    /** The curve with its valleys narrower than {@code width} samples filled to their lower rim. */
    static double[] filled(double[] curve, int width) {
        int half = Math.max(1, width / 2);
        return negated(highest(negated(highest(curve, half)), half));
    }

    /** The highest value within {@code half} samples of each; beyond the ends there is nothing. */
    private static double[] highest(double[] x, int half) {
        int n = x.length;
        double[] out = new double[n];
        int[] queue = new int[n];
        int head = 0;
        int tail = 0;
        int next = 0;
        for (int k = 0; k < n; k++) {
            while (next <= Math.min(n - 1, k + half)) {
                while (tail > head && x[queue[tail - 1]] <= x[next]) {
                    tail--;
                }
                queue[tail++] = next++;
            }
            while (queue[head] < k - half) {
                head++;
            }
            out[k] = x[queue[head]];
        }
        return out;
    }

    private static double[] negated(double[] x) {
        double[] out = new double[x.length];
        for (int k = 0; k < x.length; k++) {
            out[k] = -x[k];
        }
        return out;
    }
}
