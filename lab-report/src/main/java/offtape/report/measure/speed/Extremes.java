package offtape.report.measure.speed;

import java.util.Arrays;

/**
 * Lowest and highest of each of a bounded number of equal stretches: when there are too many,
 * neighbours join, so that hours take no more room than minutes.
 */
final class Extremes {

    private final int most;
    private final double[] low;
    private final double[] high;
    private long perStretch;
    private long within;
    private int full;

    /**
     * Starts.
     *
     * @param perStretch values a stretch to begin with
     * @param most stretches at most, even
     */
    Extremes(long perStretch, int most) {
        this.perStretch = perStretch;
        this.most = most;
        this.low = new double[most];
        this.high = new double[most];
    }

    /** Takes a value. */
    void add(double value) {
        if (full == most) {
            join();
        }
        low[full] = within == 0 ? value : Math.min(low[full], value);
        high[full] = within == 0 ? value : Math.max(high[full], value);
        within++;
        if (within == perStretch) {
            full++;
            within = 0;
        }
    }

    private void join() {
        for (int i = 0; i < most / 2; i++) {
            low[i] = Math.min(low[2 * i], low[2 * i + 1]);
            high[i] = Math.max(high[2 * i], high[2 * i + 1]);
        }
        full = most / 2;
        perStretch *= 2;
    }

    int stretches() {
        return within == 0 ? full : full + 1;
    }

    /** Lowest values, in order. */
    double[] lowest() {
        return Arrays.copyOf(low, stretches());
    }

    /** Highest values, in order. */
    double[] highest() {
        return Arrays.copyOf(high, stretches());
    }

    /** Middles of the stretches, in values from the first. */
    double[] middles() {
        double[] middles = new double[stretches()];
        Arrays.setAll(middles, i -> i * (double) perStretch + length(i) / 2.0);
        return middles;
    }

    private long length(int stretch) {
        return stretch < full ? perStretch : within;
    }
}
