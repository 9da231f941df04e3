package offtape.core.realign;

/**
 * What is expected of a moment: lateness and speed, and each line of wow in two parts. Lateness and
 * the first part of each line are what is seen.
 */
final class CourseState {

    private final int size;
    private final double[] a;
    private final double[] p;
    private final double[] gain;
    private double off;
    private double sum;

    /**
     * A state.
     *
     * @param a expected values, a pair for the walk and for each line; this object's from now on
     * @param p their covariance, row by row, likewise
     */
    CourseState(double[] a, double[] p) {
        this.size = a.length;
        this.a = a;
        this.p = p;
        this.gain = new double[size];
    }

    /** A copy that goes its own way. */
    CourseState copy() {
        CourseState copy = new CourseState(a.clone(), p.clone());
        System.arraycopy(gain, 0, copy.gain, 0, size);
        copy.off = off;
        copy.sum = sum;
        return copy;
    }

    /** Expected values. */
    double[] values() {
        return a;
    }

    /** Their covariance, row by row. */
    double[] covariance() {
        return p;
    }

    /** By how much the value last looked at lies off what was expected. */
    double off() {
        return off;
    }

    /** Variance of that. */
    double sum() {
        return sum;
    }

    /** Goes on to the next moment. */
    void move(CourseMotion motion) {
        motion.forward(a);
        motion.spread(p);
    }

    /** Looks at a value with some variance. */
    void look(double value, double variance) {
        double seen = 0;
        sum = variance;
        for (int i = 0; i < size; i += 2) {
            seen += a[i];
        }
        for (int i = 0; i < size; i++) {
            gain[i] = 0;
            for (int j = 0; j < size; j += 2) {
                gain[i] += p[i * size + j];
            }
            sum += i % 2 == 0 ? gain[i] : 0;
        }
        off = value - seen;
    }

    /** Learns from the value that was looked at. */
    void learn() {
        for (int i = 0; i < size; i++) {
            a[i] += gain[i] / sum * off;
            for (int j = 0; j < size; j++) {
                p[i * size + j] -= gain[i] * gain[j] / sum;
            }
        }
    }
}
