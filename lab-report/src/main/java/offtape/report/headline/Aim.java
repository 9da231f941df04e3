package offtape.report.headline;

/** Which way a figure is better. */
public enum Aim {
    /** The less the better. */
    LOWER,
    /** The more the better. */
    HIGHER,
    /** The nearer to nought the better. */
    NEARER_ZERO;

    /** How much better the second value is, positive if it is, in the unit of both. */
    public double gain(double before, double after) {
        return switch (this) {
            case LOWER -> before - after;
            case HIGHER -> after - before;
            case NEARER_ZERO -> Math.abs(before) - Math.abs(after);
        };
    }
}
