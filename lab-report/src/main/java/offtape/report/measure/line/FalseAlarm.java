package offtape.report.measure.line;

/**
 * How often noise alone looks like a line.
 *
 * <p>The power of noise in a bin of a spectrum is distributed exponentially. Held against the
 * median of M bins around it, which are noise too, it exceeds c times that median with the chance ∏
 * (M − i)/(M − i + c), i = 0 … (M − 1)/2: the Laplace transform of an order statistic of the
 * exponential distribution (H. Rohling, "Radar CFAR thresholding in clutter and multiple target
 * situations", IEEE Trans. Aerosp. Electron. Syst. 19(4), 1983, order-statistic detector; from
 * memory, and derived again for this class). For many bins it tends to 2^(−c).
 *
 * <p>The highest value between the bins counts, and a spectrum through Hann's window has more
 * independent peaks than whole bins: by Rice's formula, 0.506·√u peaks a bin at the level u of the
 * mean, 2.1 at the level where a line is told from noise.
 */
final class FalseAlarm {

    /** Peaks of noise for each hertz and second. */
    static final double PEAKS_PER_BIN = 2.1;

    private FalseAlarm() {}

    /**
     * Natural logarithm of the chance that noise in one bin stands {@code ratio} times over the
     * median of {@code bins} others.
     *
     * @param ratio of powers, 0 or more
     * @param bins an odd number
     */
    static double logChance(double ratio, int bins) {
        double sum = 0;
        for (int i = 0; i <= (bins - 1) / 2; i++) {
            sum += Math.log((bins - i) / (bins - i + ratio));
        }
        return sum;
    }
}
