package offtape.report.result;

/**
 * Spectrum of the transport's own deviation for charts.
 *
 * @param frequencyHz rates, rising
 * @param peakPercent peak deviation of a sine that would give this bin its height, percent
 * @param uncertaintyPercent its expanded uncertainty, k = 2, percent; large beside the rates that
 *     the heads do not show
 */
public record TransportSpectrum(
        double[] frequencyHz, double[] peakPercent, double[] uncertaintyPercent) {

    /** Checks that the lists belong together. */
    public TransportSpectrum {
        Columns.requireEven(frequencyHz, peakPercent, uncertaintyPercent);
    }
}
