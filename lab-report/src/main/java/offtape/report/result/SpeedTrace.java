package offtape.report.result;

/**
 * Speed deviation over time, thinned for charts: the extremes of each short stretch.
 *
 * @param seconds middle of each stretch, from the start of the tone
 * @param lowestPercent lowest deviation from the mean in the stretch, percent, 0 Hz to 200 Hz
 * @param highestPercent highest deviation from the mean in the stretch, percent
 */
public record SpeedTrace(double[] seconds, double[] lowestPercent, double[] highestPercent) {

    /** Checks that the lists belong together. */
    public SpeedTrace {
        Columns.requireEven(seconds, lowestPercent, highestPercent);
    }
}
