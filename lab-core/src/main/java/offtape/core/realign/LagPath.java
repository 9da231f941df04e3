package offtape.core.realign;

import java.util.ArrayList;
import java.util.List;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;

/**
 * A first look at the way of time along a stretch: each window is correlated with its return at
 * lags of some hundredths of a second, and of all ways through them that is taken along which both
 * are most alike while the speed changes as little as a machine's does. So a window of one steady
 * tone, which is alike at every period of it, is led by its neighbours.
 */
final class LagPath {

    /** How far the return may be off the course, seconds. */
    static final double REACH_S = 0.025;

    private static final double HIGH_HZ = 4500;

    /** Below this a path's filters turn the phase by much, so it counts less. */
    private static final double BASS_HZ = 400;

    /** Usual change of lateness from one window to the next as a share of time. */
    private static final double WOW = 0.003;

    /** How many values a window's likeness is made of, about. */
    private static final double VALUES = 40;

    private final Windows windows;
    private final RealFft fft;
    private final int reach;
    private final double step;
    private final int most;
    private final List<float[][]> heard = new ArrayList<>();
    private final List<Double> frames = new ArrayList<>();

    LagPath(Windows windows) {
        this.windows = windows;
        int needed = (int) Math.ceil(2.2 * HIGH_HZ * windows.length() / windows.sampleRateHz());
        this.fft = RealFft.ofSize(Math.min(windows.length(), RealFft.nextPowerOfTwo(needed)));
        this.step = (double) windows.length() / fft.size();
        this.reach = (int) Math.ceil(REACH_S * windows.sampleRateHz() / step);
        double usual = WOW * windows.hop() / step;
        this.most = (int) Math.ceil(5 * usual + 1);
    }

    /** Takes one window after another. */
    void add(Windows.Pair pair) {
        float[][] likeness = new float[windows.channels()][];
        for (int c = 0; c < likeness.length; c++) {
            likeness[c] = likeness(pair.original().get(c), pair.returned().get(c));
        }
        heard.add(likeness);
        frames.add(pair.frame());
    }

    /** Correlation over the lags, −1 to 1, of spectra levelled by half. */
    private float[] likeness(Windows.Bins x, Windows.Bins y) {
        double[] re = new double[fft.size() / 2 + 1];
        double[] im = new double[re.length];
        int low = windows.bin(0);
        int first = (int) Math.round(windows.omega(low) * windows.length() / (2 * Math.PI));
        int last = Math.min(windows.bin(HIGH_HZ), re.length - 1 - first);
        double one = 0;
        double other = 0;
        for (int k = 0; k < last; k++) {
            double hertz = windows.hertz(k);
            double level = hertz * hertz / (hertz * hertz + BASS_HZ * BASS_HZ);
            double a = level * Math.sqrt(x.power(k));
            double b = level * Math.sqrt(y.power(k));
            one += a;
            other += b;
            double w = a * b > 0 ? level * level / Math.sqrt(a * b) : 0;
            re[first + k] = w * (y.re()[k] * x.re()[k] + y.im()[k] * x.im()[k]);
            im[first + k] = w * (y.im()[k] * x.re()[k] - y.re()[k] * x.im()[k]);
        }
        double[] both = fft.inverse(Spectrum.of(fft.size(), re, im));
        double size = 2 * Math.sqrt(one * other) / fft.size();
        float[] lags = new float[2 * reach + 1];
        for (int k = -reach; k <= reach && size > 0; k++) {
            lags[k + reach] = (float) (both[Math.floorMod(k, fft.size())] / size);
        }
        return lags;
    }

    /** The way found: the lateness of each window that is alike enough to tell, frames. */
    List<LocalDelay> delays() {
        int[] way = way();
        List<LocalDelay> all = new ArrayList<>();
        for (int n = 0; n < way.length; n++) {
            if (gain(heard.get(n), way[n]) > 2) {
                // the lags are a step apart, and wow within a window blurs them
                double doubt = step * step;
                all.add(new LocalDelay(frames.get(n), (way[n] - reach) * step, doubt));
            }
        }
        return all;
    }

    /** For each channel the sum over the way of signed squares: its sign is the polarity. */
    double[] polarity() {
        int[] way = way();
        double[] sums = new double[windows.channels()];
        for (int n = 0; n < way.length; n++) {
            for (int c = 0; c < sums.length; c++) {
                double r = heard.get(n)[c][way[n]];
                sums[c] += r * Math.abs(r);
            }
        }
        return sums;
    }

    private static double gain(float[][] likeness, int lag) {
        double sum = 0;
        for (float[] channel : likeness) {
            double r = Math.min(0.999, Math.abs(channel[lag]));
            sum -= 0.5 * VALUES * Math.log1p(-r * r);
        }
        return sum;
    }

    private int[] way() {
        int lags = 2 * reach + 1;
        byte[][] from = new byte[heard.size()][lags];
        double[] best = new double[lags];
        for (int n = 0; n < heard.size(); n++) {
            double[] next = new double[lags];
            double change = n == 0 ? 1 : usual(frames.get(n) - frames.get(n - 1));
            for (int k = 0; k < lags; k++) {
                double most = Double.NEGATIVE_INFINITY;
                for (int d = -reachOf(n, change); d <= reachOf(n, change); d++) {
                    if (k + d >= 0 && k + d < lags) {
                        double value = best[k + d] - 0.5 * (d / change) * (d / change);
                        if (value > most) {
                            most = value;
                            from[n][k] = (byte) d;
                        }
                    }
                }
                next[k] = most + gain(heard.get(n), k);
            }
            best = next;
        }
        return traced(from, best);
    }

    private double usual(double apart) {
        return Math.max(0.3, WOW * Math.max(1, apart) / step);
    }

    private int reachOf(int n, double change) {
        return n == 0 ? 0 : (int) Math.min(100, Math.min(2.0 * most, Math.ceil(5 * change)));
    }

    private static int[] traced(byte[][] from, double[] best) {
        int[] way = new int[from.length];
        int at = 0;
        for (int k = 0; k < best.length; k++) {
            at = best[k] > best[at] ? k : at;
        }
        for (int n = way.length - 1; n >= 0; n--) {
            way[n] = at;
            at += from[n][at];
        }
        return way;
    }
}
