package offtape.report.measure.speed;

/**
 * The mean of a deviation, and how far it may be from the machine's own: wow that does not fill
 * whole turns moves a plain mean, but hardly one under Hann's window, so that the two side by side
 * show how far it did.
 */
final class MeanDeviation {

    /** What demodulation may leave, percent, k = 2. */
    private static final double OWN_PERCENT = 0.0002;

    private final long samples;
    private double sum;
    private long count;
    private double windowed;
    private double window;

    /**
     * Of so many values.
     *
     * @param samples how many there will be
     */
    MeanDeviation(long samples) {
        this.samples = samples;
    }

    void next(double[] x) {
        for (double v : x) {
            double weight = 1 - Math.cos(2 * Math.PI * (count + 0.5) / samples);
            sum += v;
            windowed += weight * v;
            window += weight;
            count++;
        }
    }

    double value() {
        return sum / count;
    }

    /** A known difference that is not taken out adds as it is (JCGM 100, F.2.4.5). */
    double uncertainty() {
        return OWN_PERCENT + Math.abs(value() - windowed / window);
    }
}
