package offtape.core.model;

/**
 * The pre-emphasis ahead of a curve, whose exact inverse follows it: (1 + iωτ)/(1 + iωσ). It raises
 * the highs so that they saturate earlier, and changes nothing that is small.
 *
 * @param seconds τ, 0 (none) or more
 * @param shelfSeconds σ, where the rise ends, 0 (never) or more
 */
public record Emphasis(double seconds, double shelfSeconds) {

    /** No emphasis. */
    public static final Emphasis NONE = new Emphasis(0, 0);

    /** Gain at a frequency, 1 at zero. */
    public double gain(double frequencyHz) {
        double omega = 2 * Math.PI * frequencyHz;
        return Math.hypot(1, omega * seconds) / Math.hypot(1, omega * shelfSeconds);
    }

    /** Phase at a frequency, radians. */
    public double phase(double frequencyHz) {
        double omega = 2 * Math.PI * frequencyHz;
        return Math.atan(omega * seconds) - Math.atan(omega * shelfSeconds);
    }
}
