package offtape.core.machine;

/**
 * How tape passes a head: position x(u) in seconds of nominal tape, u in seconds with the
 * programme's first frame at 0. x(u) = u + ξ(u), ξ(0) = 0; the speed is 1 + δ(u) of nominal, δ =
 * dξ/du, always positive.
 */
final class Motion {

    /** Perfect motion: x(u) = u. */
    static final Motion PERFECT = new Motion(null, null);

    // Newton's step leaves |dδ/du|·error²/2: after a step of 1e-7 s the rest is below 1e-12 s even
    // for scrape flutter of 0.5 % at 5 kHz.
    private static final int MOST_STEPS = 30;
    private static final double LAST_STEP_SECONDS = 1e-7;

    private final HermiteTable slow;
    private final HermiteTable fast;
    private final double fastAtZero;
    private final double slowAtZero;

    /** Sum of two displacements in seconds; either may be null. */
    Motion(HermiteTable slow, HermiteTable fast) {
        this.slow = slow;
        this.fast = fast;
        this.slowAtZero = slow == null ? 0 : slow.value(0);
        this.fastAtZero = fast == null ? 0 : fast.value(0);
    }

    /** Position of the tape, seconds of nominal tape. */
    double position(double seconds) {
        double x = seconds;
        if (slow != null) {
            x += slow.value(seconds) - slowAtZero;
        }
        if (fast != null) {
            x += fast.value(seconds) - fastAtZero;
        }
        return x;
    }

    /** Deviation δ of the speed from nominal. */
    double deviation(double seconds) {
        return (slow == null ? 0 : slow.slope(seconds)) + (fast == null ? 0 : fast.slope(seconds));
    }

    /** The moment at which the tape is at a position: the inverse of {@link #position}. */
    double timeAt(double position) {
        return timeAt(position, position);
    }

    /** As above, starting the search from a time near the answer. */
    double timeAt(double position, double guess) {
        if (slow == null && fast == null) {
            return position;
        }
        double seconds = guess;
        for (int i = 0; i < MOST_STEPS; i++) {
            double step = (position - position(seconds)) / (1 + deviation(seconds));
            seconds += step;
            if (Math.abs(step) <= LAST_STEP_SECONDS) {
                break;
            }
        }
        return seconds;
    }

    /** Upper bound of |δ|. */
    double largestDeviation() {
        return (slow == null ? 0 : slow.steepest()) + (fast == null ? 0 : fast.steepest());
    }
}
