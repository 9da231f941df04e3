package offtape.report.measure.speed;

/** The mean of a deviation, and how well its wow lets it be known. */
final class MeanDeviation {

    private final double rateHz;
    private double sum;
    private long count;
    private double second;
    private long inSecond;
    private double slow;
    private double slowSquares;
    private long seconds;

    MeanDeviation(double rateHz) {
        this.rateHz = rateHz;
    }

    void next(double[] x) {
        for (double v : x) {
            sum += v;
            second += v;
            count++;
            inSecond++;
            if (inSecond >= rateHz) {
                endSecond();
            }
        }
    }

    private void endSecond() {
        double mean = second / inSecond;
        slow += mean;
        slowSquares += mean * mean;
        seconds++;
        second = 0;
        inSecond = 0;
    }

    double value() {
        return sum / count;
    }

    /** Wow that does not fill whole periods moves the mean; noise moves it far less. */
    double uncertainty() {
        double mean = slow / seconds;
        double variance = Math.max(0, slowSquares / seconds - mean * mean);
        return 2 * Math.sqrt(variance / seconds) + 0.0002;
    }
}
