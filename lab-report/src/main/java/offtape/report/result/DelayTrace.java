package offtape.report.result;

/**
 * The delay between the channels over time.
 *
 * @param seconds middle of each twentieth of a second, from the start of the tone
 * @param microseconds mean delay over it, positive if the right channel is late; about its mean if
 *     the delay itself is not known
 */
public record DelayTrace(double[] seconds, double[] microseconds) {

    /** Checks that the lists belong together. */
    public DelayTrace {
        Columns.requireEven(seconds, microseconds);
    }
}
