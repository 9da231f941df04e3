package offtape.report.measure.speed;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import offtape.report.measure.line.FoundLine;

/**
 * The speed deviation that a return shows over time: the first ten minutes of a longer tone.
 *
 * @param percent deviation about its mean, evenly spaced; not to be modified
 * @param rateHz values a second
 * @param bandHz fastest change that passes whole
 * @param noiseDensity what the noise of the recording adds: one-sided density at a rate of change,
 *     squared percent a hertz
 * @param lines lines found in it, largest first
 */
public record HeardDeviation(
        double[] percent,
        double rateHz,
        double bandHz,
        DoubleUnaryOperator noiseDensity,
        List<FoundLine> lines) {

    /** Length, seconds. */
    public double seconds() {
        return percent.length / rateHz;
    }
}
