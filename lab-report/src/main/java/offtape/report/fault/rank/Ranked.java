package offtape.report.fault.rank;

/**
 * A fault with how likely it is there.
 *
 * @param code of the fault
 * @param channel that has it, or null
 * @param likelihood 0 to 1
 * @param severity most likely one, 0 to 1
 * @param course how it moves the symptoms
 * @param mirrored whether with the channels exchanged
 */
public record Ranked(
        String code,
        String channel,
        double likelihood,
        double severity,
        Course course,
        boolean mirrored) {}
