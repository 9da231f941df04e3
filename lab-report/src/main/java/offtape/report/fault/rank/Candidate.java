package offtape.report.fault.rank;

/**
 * One form of a fault with what it does at each severity.
 *
 * @param course of the fault
 * @param mirrored whether the channels are exchanged
 * @param code of the fault, which may share its course with another
 * @param prior logarithm of how likely it is beforehand, against its not being there
 * @param effects of rising severity
 */
record Candidate(Course course, boolean mirrored, String code, double prior, Effect[] effects) {

    /** Which form of which fault, on which side. */
    String name() {
        return code + "/" + course.variant() + "/" + mirrored;
    }

    /** The channel that has it, or null. */
    String channel() {
        return course.side().equals("right") ? mirrored ? "left" : "right" : null;
    }

    /** The severity of an effect, 0 to 1. */
    double severity(int index) {
        return (index + 0.5) / effects.length;
    }
}
