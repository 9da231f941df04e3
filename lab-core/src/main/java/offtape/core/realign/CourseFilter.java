package offtape.core.realign;

import java.util.List;

/**
 * Lateness as a speed that wanders at random (integrated random walk) and lines of wow that swing
 * with a memory, seen at uneven times under noise: Kalman filter forwards, and the smoother that
 * goes back without inverting anything.
 *
 * <p>Source: J. Durbin, S. J. Koopman, Time Series Analysis by State Space Methods, 2nd edition,
 * Oxford 2012, section 4.4 (from memory).
 */
final class CourseFilter {

    /** Standard deviation of lateness before anything is known, re how far all values swing. */
    private static final double ANY = 10;

    private static final double ANY_SPEED = 0.01;

    /** What rounding leaves of a variance that is nearly nothing, frames squared. */
    private static final double LEAST_VARIANCE = 1e-8;

    private final double[] times;
    private final double[] values;
    private final double[] variances;
    private final double wander;
    private final List<WowLine> lines;
    private final int size;

    private double likelihood;
    private double scale = 1;

    /**
     * A filter.
     *
     * @param values beside a line through all, frames
     * @param variances infinite where nothing was read
     * @param wander variance by which the speed wanders in a frame
     */
    CourseFilter(
            double[] times,
            double[] values,
            double[] variances,
            double wander,
            List<WowLine> lines) {
        this.times = times;
        this.values = values;
        this.variances = variances;
        this.wander = wander;
        this.lines = lines;
        this.size = 2 + 2 * lines.size();
    }

    /** Natural logarithm of the likelihood after {@link #run}, but for a constant. */
    double likelihood() {
        return likelihood;
    }

    /** By how much the values scatter more than was said, as a variance, at least 1. */
    double scale() {
        return scale;
    }

    /** What was predicted for each moment. */
    static final class Track {
        private final double[][] state;
        private final double[][] covariance;
        private final double[] off;
        private final double[] sum;

        Track(int count) {
            state = new double[count][];
            covariance = new double[count][];
            off = new double[count];
            sum = new double[count];
        }
    }

    /** Runs forwards. */
    CourseFilter run(Track track) {
        double[] a = new double[size];
        double[] p = new double[size * size];
        double[] gain = new double[size];
        begin(p);
        double logs = 0;
        double squares = 0;
        int n = 0;
        for (int k = 0; k < times.length; k++) {
            if (k > 0) {
                Motion motion = new Motion(times[k] - times[k - 1]);
                motion.forward(a);
                motion.spread(p);
            }
            double seen = 0;
            double sum = variances[k];
            for (int i = 0; i < size; i += 2) {
                seen += a[i];
            }
            for (int i = 0; i < size; i++) {
                gain[i] = 0;
                for (int j = 0; j < size; j += 2) {
                    gain[i] += p[i * size + j];
                }
                sum += i % 2 == 0 ? gain[i] : 0;
            }
            double off = values[k] - seen;
            if (track != null) {
                track.state[k] = a.clone();
                track.covariance[k] = p.clone();
                track.off[k] = off;
                track.sum[k] = sum;
            }
            if (Double.isInfinite(variances[k])) {
                continue;
            }
            if (n++ > 1) {
                logs += Math.log(sum);
                squares += off * off / sum;
            }
            for (int i = 0; i < size; i++) {
                a[i] += gain[i] / sum * off;
                for (int j = 0; j < size; j++) {
                    p[i * size + j] -= gain[i] * gain[j] / sum;
                }
            }
        }
        int free = Math.max(1, n - 2);
        scale = Math.max(1, squares / free);
        likelihood = -0.5 * (logs + free * Math.log(scale) + squares / scale);
        return this;
    }

    private void begin(double[] p) {
        double squares = 1;
        int n = 1;
        for (int k = 0; k < times.length; k++) {
            boolean isRead = Double.isFinite(variances[k]);
            squares += isRead ? values[k] * values[k] : 0;
            n += isRead ? 1 : 0;
        }
        p[0] = ANY * ANY * squares / n;
        p[size + 1] = ANY_SPEED * ANY_SPEED;
        for (int l = 0; l < lines.size(); l++) {
            int i = 2 + 2 * l;
            p[i * size + i] = lines.get(l).power();
            p[(i + 1) * size + i + 1] = lines.get(l).power();
        }
    }

    /** Runs forwards and back. */
    Smoothed smooth() {
        int n = times.length;
        Track track = new Track(n);
        run(track);
        double[] late = new double[n];
        double[] slopes = new double[n];
        double[] doubts = new double[n];
        double[] r = new double[size];
        double[] m = new double[size * size];
        for (int k = n - 1; k >= 0; k--) {
            if (k < n - 1) {
                Motion motion = new Motion(times[k + 1] - times[k]);
                motion.back(r);
                motion.backBoth(m);
            }
            double[] p = track.covariance[k];
            if (Double.isFinite(variances[k])) {
                update(r, m, p, track.off[k], track.sum[k]);
            }
            double[] s = track.state[k].clone();
            for (int i = 0; i < size; i++) {
                for (int j = 0; j < size; j++) {
                    s[i] += p[i * size + j] * r[j];
                }
            }
            late[k] = seen(s);
            slopes[k] = slope(s);
            doubts[k] = scale * Math.max(LEAST_VARIANCE, variance(p, m));
        }
        return new Smoothed(late, slopes, doubts, wander, scale, likelihood, lines);
    }

    /** Takes what one moment tells into what all behind it tell. */
    private void update(double[] r, double[] m, double[] p, double off, double sum) {
        double[] gain = new double[size];
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < size; j += 2) {
                gain[i] += p[i * size + j] / sum;
            }
        }
        double along = 0;
        double[] mg = new double[size];
        double gmg = 0;
        for (int i = 0; i < size; i++) {
            along += gain[i] * r[i];
            for (int j = 0; j < size; j++) {
                mg[i] += m[i * size + j] * gain[j];
            }
        }
        for (int i = 0; i < size; i++) {
            gmg += gain[i] * mg[i];
        }
        for (int i = 0; i < size; i++) {
            boolean isSeen = i % 2 == 0;
            r[i] += isSeen ? off / sum - along : 0;
            for (int j = 0; j < size; j++) {
                boolean isOther = j % 2 == 0;
                m[i * size + j] +=
                        (isSeen && isOther ? 1 / sum + gmg : 0)
                                - (isSeen ? mg[j] : 0)
                                - (isOther ? mg[i] : 0);
            }
        }
    }

    private static double seen(double[] s) {
        double sum = 0;
        for (int i = 0; i < s.length; i += 2) {
            sum += s[i];
        }
        return sum;
    }

    private double slope(double[] s) {
        double slope = s[1];
        for (int l = 0; l < lines.size(); l++) {
            slope -= lines.get(l).omega() * s[3 + 2 * l];
        }
        return slope;
    }

    /** Variance of what is seen: hᵀ(P − P·M·P)h. */
    private double variance(double[] p, double[] m) {
        double[] ph = new double[size];
        double sum = 0;
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < size; j += 2) {
                ph[i] += p[i * size + j];
            }
            sum += i % 2 == 0 ? ph[i] : 0;
        }
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < size; j++) {
                sum -= ph[i] * m[i * size + j] * ph[j];
            }
        }
        return sum;
    }

    /** What happens between two moments: a block of two by two for the walk and for each line. */
    private final class Motion {

        private final double apart;
        private final double[] f;

        Motion(double apart) {
            this.apart = apart;
            this.f = new double[2 * size];
            f[0] = 1;
            f[1] = apart;
            f[3] = 1;
            for (int l = 0; l < lines.size(); l++) {
                WowLine line = lines.get(l);
                double kept = Math.exp(-apart / line.memory());
                double cos = kept * Math.cos(line.omega() * apart);
                double sin = kept * Math.sin(line.omega() * apart);
                f[4 + 4 * l] = cos;
                f[5 + 4 * l] = -sin;
                f[6 + 4 * l] = sin;
                f[7 + 4 * l] = cos;
            }
        }

        void forward(double[] a) {
            for (int b = 0; b < size; b += 2) {
                double x = a[b];
                double y = a[b + 1];
                a[b] = f[2 * b] * x + f[2 * b + 1] * y;
                a[b + 1] = f[2 * b + 2] * x + f[2 * b + 3] * y;
            }
        }

        void back(double[] r) {
            for (int b = 0; b < size; b += 2) {
                double x = r[b];
                double y = r[b + 1];
                r[b] = f[2 * b] * x + f[2 * b + 2] * y;
                r[b + 1] = f[2 * b + 1] * x + f[2 * b + 3] * y;
            }
        }

        void spread(double[] p) {
            both(p, false);
            p[0] += wander * apart * apart * apart / 3;
            p[1] += wander * apart * apart / 2;
            p[size] += wander * apart * apart / 2;
            p[size + 1] += wander * apart;
            for (int l = 0; l < lines.size(); l++) {
                double lost = -Math.expm1(-2 * apart / lines.get(l).memory());
                int i = 2 + 2 * l;
                p[i * size + i] += lines.get(l).power() * lost;
                p[(i + 1) * size + i + 1] += lines.get(l).power() * lost;
            }
        }

        void backBoth(double[] m) {
            both(m, true);
        }

        /** F·P·Fᵀ, or Fᵀ·P·F, block by block. */
        private void both(double[] p, boolean isBack) {
            for (int b = 0; b < size; b += 2) {
                for (int c = 0; c < size; c += 2) {
                    block(p, b, c, isBack);
                }
            }
        }

        private void block(double[] p, int b, int c, boolean isBack) {
            double a01 = isBack ? f[2 * b + 2] : f[2 * b + 1];
            double a10 = isBack ? f[2 * b + 1] : f[2 * b + 2];
            double c01 = isBack ? f[2 * c + 2] : f[2 * c + 1];
            double c10 = isBack ? f[2 * c + 1] : f[2 * c + 2];
            int at = b * size + c;
            double p00 = p[at];
            double p01 = p[at + 1];
            double p10 = p[at + size];
            double p11 = p[at + size + 1];
            double q00 = f[2 * b] * p00 + a01 * p10;
            double q01 = f[2 * b] * p01 + a01 * p11;
            double q10 = a10 * p00 + f[2 * b + 3] * p10;
            double q11 = a10 * p01 + f[2 * b + 3] * p11;
            p[at] = q00 * f[2 * c] + q01 * c01;
            p[at + 1] = q00 * c10 + q01 * f[2 * c + 3];
            p[at + size] = q10 * f[2 * c] + q11 * c01;
            p[at + size + 1] = q10 * c10 + q11 * f[2 * c + 3];
        }
    }
}
