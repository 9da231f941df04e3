package offtape.report.fault.rank;

/**
 * The joint density of independent values with tails heavier than normal (Student's t), without its
 * constant. Factors are multiplied and their logarithm taken now and then, which is faster than one
 * for each.
 */
final class Tails {

    /** Degrees of freedom. */
    private static final double FREEDOM = 16;

    /** Well within what a number can hold, with room for one more factor. */
    private static final double LARGE = 1e100;

    private double body = 1;
    private double width = 1;
    private double sum;

    /**
     * One more value.
     *
     * @param squared distance from where it is expected, squared
     * @param variance about that, above 0
     */
    void add(double squared, double variance) {
        body *= 1 + squared / (variance * FREEDOM);
        width *= variance;
        if (body > LARGE || width > LARGE || width < 1 / LARGE) {
            take();
        }
    }

    private void take() {
        sum -= (FREEDOM + 1) / 2 * Math.log(body) + Math.log(width) / 2;
        body = 1;
        width = 1;
    }

    /** Logarithm of the density. */
    double log() {
        take();
        return sum;
    }
}
