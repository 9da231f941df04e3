package offtape.core.realign;

/**
 * Sums over many windows of one channel, loud and quiet moments of each bin apart: from the loud
 * ones the response, from the quiet ones the noise that is always there.
 */
final class Tally {

    /** A moment of a bin is quiet below this share of its mean power so far. */
    private static final double QUIET = 0.02;

    /** Least noise in proportion to the sound: the rounding of the sums. */
    private static final double LEAST_SHARE = 1e-9;

    private static final int LEAST_BINS = 2;

    /** Weight of a bin without any noise re one that is half noise. */
    private static final double MOST_WEIGHT = 30;

    private final int bins;
    private final double width;
    private final double[][] one = new double[2][];
    private final double[][] other = new double[2][];
    private final double[][] re = new double[2][];
    private final double[][] im = new double[2][];
    private final double[][] number = new double[2][];

    /**
     * Sums that begin.
     *
     * @param width by which ratio of frequencies to either side the response is smoothed
     */
    Tally(int bins, double width) {
        this.bins = bins;
        this.width = width;
        for (int c = 0; c < 2; c++) {
            one[c] = new double[bins];
            other[c] = new double[bins];
            re[c] = new double[bins];
            im[c] = new double[bins];
            number[c] = new double[bins];
        }
    }

    /** Adds a window whose return is later by some frames than it was read. */
    void add(Windows windows, Windows.Bins x, Windows.Bins y, double late) {
        double turn = windows.bins() > 1 ? windows.omega(1) - windows.omega(0) : 0;
        double cos = Math.cos(windows.omega(0) * late);
        double sin = Math.sin(windows.omega(0) * late);
        double stepCos = Math.cos(turn * late);
        double stepSin = Math.sin(turn * late);
        for (int k = 0; k < bins; k++) {
            double px = x.power(k);
            double a = y.re()[k] * x.re()[k] + y.im()[k] * x.im()[k];
            double b = y.im()[k] * x.re()[k] - y.re()[k] * x.im()[k];
            double seen = number[0][k] + number[1][k];
            boolean isQuiet = px * seen < QUIET * (one[0][k] + one[1][k]);
            int c = isQuiet ? 1 : 0;
            one[c][k] += px;
            other[c][k] += y.power(k);
            re[c][k] += a * cos - b * sin;
            im[c][k] += a * sin + b * cos;
            number[c][k]++;
            double next = cos * stepCos - sin * stepSin;
            sin = sin * stepCos + cos * stepSin;
            cos = next;
        }
    }

    /** The path as the sums show it. */
    Transfer transfer() {
        double[] px = smooth(plus(one));
        double[] a = smooth(plus(re));
        double[] b = smooth(plus(im));
        double[][] h = response();
        double[] hr = h[0];
        double[] hi = h[1];
        double[][] rest = {rest(0, hr, hi), rest(1, hr, hi)};
        double[] quiet = smooth(rest[1]);
        double[] quietNumber = smooth(number[1]);
        double[] quietSound = smooth(one[1]);
        double[] loud = smooth(rest[0]);
        double[] loudNumber = smooth(number[0]);
        double[] loudSound = smooth(one[0]);
        double[] floor = new double[bins];
        double[] share = new double[bins];
        double[] coherence = new double[bins];
        double[] py = smooth(plus(other));
        for (int k = 0; k < bins; k++) {
            double gain = hr[k] * hr[k] + hi[k] * hi[k];
            double l = loudNumber[k] > 0 ? loud[k] / loudNumber[k] : 0;
            double q = quietNumber[k] > 1 ? Math.min(quiet[k] / quietNumber[k], l) : 0;
            double sl = loudNumber[k] > 0 ? gain * loudSound[k] / loudNumber[k] : 0;
            double sq = quietNumber[k] > 1 ? gain * quietSound[k] / quietNumber[k] : 0;
            double slope = sl > sq ? Math.max(0, l - q) / (sl - sq) : 0;
            share[k] = Math.max(LEAST_SHARE, slope);
            floor[k] = Math.max(0, q - slope * sq);
            double size = px[k] * py[k];
            coherence[k] = size > 0 ? Math.min(1, (a[k] * a[k] + b[k] * b[k]) / size) : 0;
        }
        return new Transfer(hr, hi, floor, share, coherence);
    }

    /**
     * The response, smoothed with each bin weighed by its coherence and not by its power: a strong
     * note would set its neighbourhood after itself.
     */
    private double[][] response() {
        double[] px = near(plus(one));
        double[] py = near(plus(other));
        double[] a = near(plus(re));
        double[] b = near(plus(im));
        double[] weight = new double[bins];
        for (int k = 0; k < bins; k++) {
            double size = px[k] * py[k];
            double c = size > 0 ? (a[k] * a[k] + b[k] * b[k]) / size : 0;
            weight[k] = Math.min(MOST_WEIGHT, c / Math.max(1e-12, 1 - c));
            a[k] *= px[k] > 0 ? weight[k] / px[k] : 0;
            b[k] *= px[k] > 0 ? weight[k] / px[k] : 0;
        }
        double[] sum = smooth(weight);
        double[][] h = {smooth(a), smooth(b)};
        for (int k = 0; k < bins; k++) {
            h[0][k] = sum[k] > 0 ? h[0][k] / sum[k] : 0;
            h[1][k] = sum[k] > 0 ? h[1][k] / sum[k] : 0;
        }
        return h;
    }

    /** Smoothed over what a window's leakage reaches. */
    private double[] near(double[] x) {
        return smooth(x, 0);
    }

    /** Power that the response does not explain. */
    private double[] rest(int c, double[] hr, double[] hi) {
        double[] out = new double[bins];
        for (int k = 0; k < bins; k++) {
            double h = hr[k] * hr[k] + hi[k] * hi[k];
            double both = hr[k] * re[c][k] + hi[k] * im[c][k];
            out[k] = Math.max(0, other[c][k] - 2 * both + h * one[c][k]);
        }
        return out;
    }

    private static double[] plus(double[][] two) {
        double[] sum = two[0].clone();
        for (int k = 0; k < sum.length; k++) {
            sum[k] += two[1][k];
        }
        return sum;
    }

    private double[] smooth(double[] x) {
        return smooth(x, width);
    }

    private double[] smooth(double[] x, double width) {
        double[] sums = new double[bins + 1];
        for (int k = 0; k < bins; k++) {
            sums[k + 1] = sums[k] + x[k];
        }
        double[] out = new double[bins];
        for (int k = 0; k < bins; k++) {
            int reach = Math.min((int) Math.max(LEAST_BINS, width * k), Math.min(k, bins - 1 - k));
            out[k] = (sums[k + reach + 1] - sums[k - reach]) / (2 * reach + 1);
        }
        return out;
    }
}
