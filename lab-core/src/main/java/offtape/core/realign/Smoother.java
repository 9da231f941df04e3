package offtape.core.realign;

import java.util.Arrays;

/**
 * Draws the likeliest course of time through delays of unlike worth: the speed is taken to wander
 * at random (integrated random walk), which is a cubic smoothing spline, computed by a Kalman
 * filter and the smoother of Rauch, Tung and Striebel. How much it wanders is what makes the delays
 * likeliest; a straight line is kept unless wandering explains them clearly better, so that a
 * steady path stays one. Delays far off the curve lose weight.
 *
 * <p>Source: G. Wahba, Spline Models for Observational Data, SIAM 1990, for splines as estimates of
 * an integrated random walk; H. E. Rauch, F. Tung, C. T. Striebel, AIAA Journal 3 (1965), for the
 * smoother (both from memory).
 */
final class Smoother {

    private static final double SLOWEST = 1e-17;
    private static final double FASTEST = 1e-3;
    private static final double RATIO = Math.sqrt(10);

    /** Standard deviation of lateness and speed before anything is known: as good as anything. */
    private static final double ANY_FRAMES = 1e4;

    private static final double ANY_SPEED = 0.05;

    /** Beyond so many standard deviations a delay loses weight. */
    private static final double FAR = 3;

    private final double[] times;
    private final double[] values;
    private final double[] given;
    private final double[] variances;

    /**
     * Delays in the order of time.
     *
     * @param times frames
     * @param values frames
     * @param variances frames squared, above 0
     */
    Smoother(double[] times, double[] values, double[] variances) {
        this.times = times;
        this.values = values;
        this.given = variances;
        this.variances = variances.clone();
    }

    /**
     * The likeliest curve.
     *
     * @param sampleRateHz frames a second
     */
    Smoothed likeliest(double sampleRateHz) {
        double roughness = 0;
        Smoothed curve = null;
        for (int round = 0; round < 3; round++) {
            roughness = roughness(sampleRateHz);
            curve = smooth(roughness);
            weighDown(curve);
        }
        return smooth(roughness);
    }

    private double roughness(double rate) {
        double line = filter(0, null).likelihood();
        double best = line + 2 + 0.5 * Math.log(times.length + 1.0);
        double found = 0;
        for (double q = SLOWEST; q < FASTEST; q *= RATIO) {
            double here = filter(q / rate, null).likelihood();
            if (here > best) {
                best = here;
                found = q / rate;
            }
        }
        return found;
    }

    private void weighDown(Smoothed curve) {
        for (int k = 0; k < times.length; k++) {
            double off = values[k] - curve.values()[k];
            double far = off * off / (FAR * FAR * curve.scale() * given[k]);
            variances[k] = given[k] * Math.max(1, far);
        }
    }

    private record Filtered(double likelihood, double scale) {}

    /** What the filter leaves for the smoother at each delay. */
    private static final class Track {
        final double[][] state;

        Track(int count) {
            // lateness, speed, their covariance three; predicted, then updated
            state = new double[count][];
        }
    }

    private Filtered filter(double q, Track track) {
        double x = 0;
        double v = 0;
        double xx = ANY_FRAMES * ANY_FRAMES;
        double xv = 0;
        double vv = ANY_SPEED * ANY_SPEED;
        double logs = 0;
        double squares = 0;
        for (int k = 0; k < times.length; k++) {
            double dt = k == 0 ? 0 : times[k] - times[k - 1];
            x += dt * v;
            xx += dt * (2 * xv + dt * vv) + q * dt * dt * dt / 3;
            xv += dt * vv + q * dt * dt / 2;
            vv += q * dt;
            double[] s = track == null ? null : new double[10];
            if (s != null) {
                keep(s, 0, x, v, xx, xv, vv);
            }
            double off = values[k] - x;
            double sum = xx + variances[k];
            if (k > 1) {
                logs += Math.log(sum);
                squares += off * off / sum;
            }
            double gx = xx / sum;
            double gv = xv / sum;
            x += gx * off;
            v += gv * off;
            vv -= gv * xv;
            xv *= variances[k] / sum;
            xx *= variances[k] / sum;
            if (s != null) {
                keep(s, 5, x, v, xx, xv, vv);
                track.state[k] = s;
            }
        }
        int n = Math.max(1, times.length - 2);
        double scale = Math.max(1, squares / n);
        return new Filtered(-0.5 * (logs + n * Math.log(scale) + squares / scale), scale);
    }

    private static void keep(double[] s, int at, double x, double v, double a, double b, double c) {
        s[at] = x;
        s[at + 1] = v;
        s[at + 2] = a;
        s[at + 3] = b;
        s[at + 4] = c;
    }

    private Smoothed smooth(double q) {
        return q > 0 ? curve(q) : line();
    }

    /** The straight line. */
    Smoothed line() {
        Filtered filtered = filter(0, null);
        WeightedLine line = WeightedLine.through(times, values, variances);
        int n = times.length;
        double[] late = new double[n];
        double[] slopes = new double[n];
        double[] doubts = new double[n];
        for (int k = 0; k < n; k++) {
            late[k] = line.at(times[k]);
            slopes[k] = line.slope();
            doubts[k] = filtered.scale() * line.variance(times[k]);
        }
        return new Smoothed(late, slopes, doubts, 0, filtered.scale(), filtered.likelihood());
    }

    private Smoothed curve(double q) {
        int n = times.length;
        Track track = new Track(n);
        Filtered filtered = filter(q, track);
        double[] late = new double[n];
        double[] slopes = new double[n];
        double[] doubts = new double[n];
        double[] next = null;
        for (int k = n - 1; k >= 0; k--) {
            double[] s = track.state[k];
            double[] here = Arrays.copyOfRange(s, 5, 10);
            if (next != null) {
                backward(here, next, track.state[k + 1], times[k + 1] - times[k]);
            }
            late[k] = here[0];
            slopes[k] = here[1];
            doubts[k] = filtered.scale() * here[2];
            next = here;
        }
        return new Smoothed(late, slopes, doubts, q, filtered.scale(), filtered.likelihood());
    }

    /** Draws what was known forwards towards what is known of the next moment. */
    private static void backward(double[] here, double[] next, double[] ahead, double dt) {
        double a = ahead[2];
        double b = ahead[3];
        double c = ahead[4];
        double det = a * c - b * b;
        // covariance of here with the predicted next: P · Fᵀ
        double m00 = here[2] + dt * here[3];
        double m01 = here[3];
        double m10 = here[3] + dt * here[4];
        double m11 = here[4];
        double g00 = (m00 * c - m01 * b) / det;
        double g01 = (m01 * a - m00 * b) / det;
        double g10 = (m10 * c - m11 * b) / det;
        double g11 = (m11 * a - m10 * b) / det;
        double dx = next[0] - ahead[0];
        double dv = next[1] - ahead[1];
        here[0] += g00 * dx + g01 * dv;
        here[1] += g10 * dx + g11 * dv;
        double da = next[2] - a;
        double db = next[3] - b;
        double dc = next[4] - c;
        double xx = g00 * (g00 * da + g01 * db) + g01 * (g00 * db + g01 * dc);
        double xv = g00 * (g10 * da + g11 * db) + g01 * (g10 * db + g11 * dc);
        double vv = g10 * (g10 * da + g11 * db) + g11 * (g10 * db + g11 * dc);
        here[2] += xx;
        here[3] += xv;
        here[4] += vv;
    }
}
