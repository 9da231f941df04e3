package offtape.report.measure.line;

/**
 * A line of a deviation. Uncertainties are expanded, k = 2.
 *
 * @param startHz frequency at the beginning of the stretch
 * @param endHz frequency at its end; the same if the line does not move
 * @param hzUncertainty of either
 * @param peakPercent peak deviation
 * @param peakUncertainty of the peak, percent
 * @param changeHzPerS mean change of the frequency; 0 if the line does not move
 * @param changeUncertainty of the change, Hz/s; 0 where movement was not asked for
 */
public record FoundLine(
        double startHz,
        double endHz,
        double hzUncertainty,
        double peakPercent,
        double peakUncertainty,
        double changeHzPerS,
        double changeUncertainty) {

    /** Frequency halfway. */
    public double middleHz() {
        return (startHz + endHz) / 2;
    }

    /** Whether the frequency moves. */
    public boolean moves() {
        return changeHzPerS != 0;
    }
}
