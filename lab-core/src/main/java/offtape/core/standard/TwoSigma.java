package offtape.core.standard;

/**
 * The two-sigma statistic (AES6-2008; amendment 1 of IEC 60386): the magnitude that is not exceeded
 * 95.45 % of the time. Magnitudes are counted in classes 0.05 % wide and the statistic is
 * interpolated within its class, so that hours take no more memory than seconds; it errs by less
 * than 0.05 %.
 */
public final class TwoSigma {

    private static final double SHARE = 0.9545;
    private static final double CLASS_WIDTH = Math.log(1.0005);

    /** Magnitudes at or under this share the lowest class. */
    private static final double LEAST = 1e-9;

    private static final int CLASSES = 1 << 16;

    private final long[] counts = new long[CLASSES];
    private long total;

    /** Takes values, such as a settled weighted deviation in percent. */
    public void add(double[] values) {
        for (double value : values) {
            double place = Math.log(Math.abs(value) / LEAST) / CLASS_WIDTH;
            counts[(int) Math.max(0, Math.min(CLASSES - 1.0, Math.ceil(place)))]++;
        }
        total += values.length;
    }

    /** The statistic, in the unit of the values; 0 if there were none. */
    public double value() {
        double wanted = SHARE * total;
        long below = 0;
        for (int i = 0; i < CLASSES; i++) {
            if (counts[i] > 0 && below + counts[i] >= wanted) {
                double within = (wanted - below) / counts[i];
                return i == 0 ? 0 : LEAST * Math.exp((i - 1 + within) * CLASS_WIDTH);
            }
            below += counts[i];
        }
        return 0;
    }
}
