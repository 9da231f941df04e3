package offtape.report.result;

/**
 * Spectrum of the speed deviation for charts.
 *
 * @param frequencyHz rates, rising
 * @param peakPercent peak deviation of a sine that would give this bin its height, percent
 */
public record SpeedSpectrum(double[] frequencyHz, double[] peakPercent) {

    /** Checks that the lists belong together. */
    public SpeedSpectrum {
        Columns.requireEven(frequencyHz, peakPercent);
    }
}
