package offtape.report.result;

/**
 * The weighted quasi-peak reading over time: the highest in each stretch of half a second, or in
 * longer ones when the tone is long.
 *
 * @param seconds middle of each stretch, from the start of the tone
 * @param weightedPeakPercent highest reading in the stretch, percent
 */
public record SpeedReadings(double[] seconds, double[] weightedPeakPercent) {

    /** Checks that the lists belong together. */
    public SpeedReadings {
        Columns.requireEven(seconds, weightedPeakPercent);
    }
}
