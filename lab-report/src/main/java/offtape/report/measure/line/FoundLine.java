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

    /**
     * Turns that its part has made since the middle of the stretch.
     *
     * @param fromMiddle time from the middle, seconds
     * @param seconds length of the stretch
     */
    public double turns(double fromMiddle, double seconds) {
        // f = f₀/√(1 + b·t) at both ends: (1 + b·T/2)/(1 − b·T/2) is the square of their ratio
        double ratio = startHz * startHz / (endHz * endHz);
        double half = (ratio - 1) / (ratio + 1);
        double middle = startHz * Math.sqrt(1 - half);
        return middle * Line.turned(fromMiddle, 2 * half / seconds);
    }

    /** Whether the frequency moves. */
    public boolean moves() {
        return changeHzPerS != 0;
    }
}
