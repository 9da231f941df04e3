package offtape.core.realign;

import java.util.List;

/**
 * The way back over the moments of a {@link CourseFilter}: what all later moments tell of each one.
 */
final class CourseReturn {

    /** What rounding leaves of a variance that is nearly nothing, frames squared. */
    private static final double LEAST_VARIANCE = 1e-8;

    private final int size;
    private final List<WowLine> lines;
    private final double[] r;
    private final double[] m;

    CourseReturn(List<WowLine> lines) {
        this.lines = lines;
        this.size = 2 + 2 * lines.size();
        this.r = new double[size];
        this.m = new double[size * size];
    }

    /** Goes back from a moment to the one before it. */
    void move(CourseMotion motion) {
        motion.back(r);
        motion.backBoth(m);
    }

    /** Lateness, slope and variance of a moment, what came before it and what comes after known. */
    double[] smoothed(CourseState state, boolean isRead) {
        double[] p = state.covariance();
        if (isRead) {
            update(p, state.off(), state.sum());
        }
        double[] s = state.values().clone();
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < size; j++) {
                s[i] += p[i * size + j] * r[j];
            }
        }
        return new double[] {seen(s), slope(s), Math.max(LEAST_VARIANCE, variance(p))};
    }

    /** Takes what one moment tells into what all behind it tell. */
    private void update(double[] p, double off, double sum) {
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
    private double variance(double[] p) {
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
}
