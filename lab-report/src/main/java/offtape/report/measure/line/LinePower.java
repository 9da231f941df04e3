package offtape.report.measure.line;

import java.util.Arrays;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;

/**
 * Power over frequency of a stretch under Hann's window, in squares of the peak value that a sine
 * would have, and what noise there is around each place.
 */
final class LinePower {

    private static final double[] NONE = {};

    /** Bins to each side that belong to a line itself. */
    private static final int LOBE = 3;

    /** Noise is read in every second bin: through Hann's window those are independent. */
    private static final int APART = 2;

    private static final double EDGE = 2;
    private static final int FEWEST = 5;
    private static final int MOST = 51;
    private static final int LEAST_REACH = 15;
    private static final int BLOCK = 64;

    /** A peak that is not this many times over the median of its block is not looked into. */
    private static final double WORTH_A_LOOK = 6;

    private final double[] power;
    private final double binHz;
    private final double perBin;
    private final double[] blocks;

    private LinePower(double[] power, double binHz, double perBin) {
        this.power = power;
        this.binHz = binHz;
        this.perBin = perBin;
        this.blocks = new double[Math.max(1, power.length / blockLength())];
        Arrays.fill(blocks, Double.NaN);
    }

    /** The power of a stretch, with two to four places a bin. */
    static LinePower of(Stretch stretch) {
        double[] windowed = new double[stretch.size()];
        double sum = 0;
        for (int i = 0; i < windowed.length; i++) {
            double w = stretch.window(stretch.at(i));
            windowed[i] = w * stretch.samples()[i];
            sum += w;
        }
        return of(windowed, sum, stretch.rateHz(), stretch.seconds(), 2);
    }

    /**
     * The power of samples that carry their window.
     *
     * @param windows sum of the windows
     * @param seconds length that the window spans
     * @param padding how many times over the transform is longer, at least
     */
    static LinePower of(
            double[] windowed, double windows, double rateHz, double seconds, int padding) {
        int n = RealFft.nextPowerOfTwo(padding * windowed.length);
        Spectrum spectrum = RealFft.ofSize(n).forward(windowed);
        double[] power = new double[spectrum.bins()];
        for (int k = 0; k < power.length; k++) {
            power[k] = 4 * spectrum.power(k) / (windows * windows);
        }
        double binHz = spectrum.binHz(rateHz);
        return new LinePower(power, binHz, 1 / (seconds * binHz));
    }

    double binHz() {
        return binHz;
    }

    int size() {
        return power.length;
    }

    double power(int k) {
        return power[k];
    }

    int nearest(double hz) {
        return (int) Math.round(hz / binHz);
    }

    /** Whether a place is the highest within a bin to either side and worth a look. */
    boolean isTop(int k) {
        int reach = (int) Math.ceil(perBin);
        if (k < reach || k >= power.length - reach || power[k] <= 0) {
            return false;
        }
        for (int d = 1; d <= reach; d++) {
            if (power[k] < power[k - d] || power[k] <= power[k + d]) {
                return false;
            }
        }
        int b = Math.min(k / blockLength(), blocks.length - 1);
        double least = blockMedian(b);
        least = b > 0 ? Math.min(least, blockMedian(b - 1)) : least;
        least = b + 1 < blocks.length ? Math.min(least, blockMedian(b + 1)) : least;
        return power[k] > WORTH_A_LOOK * least;
    }

    private int blockLength() {
        return (int) Math.ceil(BLOCK * perBin);
    }

    /** The median of a block, worked out when it is first asked for. */
    private double blockMedian(int b) {
        if (Double.isNaN(blocks[b])) {
            int length = blockLength();
            int end = Math.min(power.length, (b + 1) * length);
            double[] part = Arrays.copyOfRange(power, b * length, end);
            Arrays.sort(part);
            blocks[b] = part[part.length / 2];
        }
        return blocks[b];
    }

    /** Logarithm of the chance that noise reaches the power at a place. */
    double logChance(int k) {
        double[] below = side(k, -1);
        double[] above = side(k, 1);
        double floor = Math.max(median(below), median(above));
        if (floor <= 0) {
            return Double.NEGATIVE_INFINITY;
        }
        return FalseAlarm.logChance(power[k] / floor, Math.max(below.length, above.length));
    }

    /**
     * Mean power of the noise around a frequency, from the medians of both sides; where one side is
     * twice as noisy as the other a band of noise has its edge there, and the noisier one counts.
     */
    double noise(double hz) {
        int k = nearest(hz);
        double[] below = side(k, -1);
        double[] above = side(k, 1);
        double lower = median(below);
        double upper = median(above);
        double more = Math.max(lower, upper);
        double mean =
                (lower * below.length + upper * above.length)
                        / Math.max(1, below.length + above.length);
        return (more > EDGE * Math.min(lower, upper) ? more : mean) / Math.log(2);
    }

    /** Mean power within the lobe of a line at a frequency, which has been taken out. */
    double left(double hz) {
        double sum = 0;
        for (int d = -LOBE; d <= LOBE; d++) {
            int k = nearest(hz) + (int) Math.round(d * perBin);
            sum += power[Math.max(0, Math.min(power.length - 1, k))];
        }
        return sum / (2 * LOBE + 1);
    }

    private double[] side(int k, int sign) {
        int reach = (int) Math.max(LEAST_REACH, Math.min(MOST, k / perBin / 16));
        double[] found = new double[reach];
        int count = 0;
        for (int i = 0; i < reach; i++) {
            int at = k + sign * (int) Math.round((LOBE + APART * i) * perBin);
            if (at >= perBin && at < power.length) {
                found[count++] = power[at];
            }
        }
        int odd = count % 2 == 0 ? count - 1 : count;
        return odd < FEWEST ? NONE : Arrays.copyOf(found, odd);
    }

    private static double median(double[] odd) {
        if (odd.length == 0) {
            return 0;
        }
        Arrays.sort(odd);
        return odd[odd.length / 2];
    }
}
