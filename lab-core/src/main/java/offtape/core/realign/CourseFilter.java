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

    /** The way back is made in pieces of so many moments, so that the way there is not all kept. */
    private static final int PIECE = 512;

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

    /** Runs forwards. */
    CourseFilter run() {
        return run(null);
    }

    private CourseFilter run(CourseState[] kept) {
        CourseState state = begin();
        double logs = 0;
        double squares = 0;
        int n = 0;
        for (int k = 0; k < times.length; k++) {
            reach(state, k);
            if (kept != null && k % PIECE == 0) {
                kept[k / PIECE] = state.copy();
            }
            if (isRead(k)) {
                if (n++ > 1) {
                    logs += Math.log(state.sum());
                    squares += state.off() * state.off() / state.sum();
                }
                state.learn();
            }
        }
        int free = Math.max(1, n - 2);
        scale = Math.max(1, squares / free);
        likelihood = -0.5 * (logs + free * Math.log(scale) + squares / scale);
        return this;
    }

    private boolean isRead(int k) {
        return Double.isFinite(variances[k]);
    }

    /** Goes on to a moment and looks at it. */
    private void reach(CourseState state, int k) {
        if (k > 0) {
            state.move(motion(k));
        }
        state.look(values[k], variances[k]);
    }

    private CourseMotion motion(int k) {
        return new CourseMotion(times[k] - times[k - 1], wander, lines);
    }

    private CourseState begin() {
        double[] p = new double[size * size];
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
        return new CourseState(new double[size], p);
    }

    /** Runs forwards and back. */
    Smoothed smooth() {
        int n = times.length;
        CourseState[] kept = new CourseState[(n + PIECE - 1) / PIECE];
        run(kept);
        double[] late = new double[n];
        double[] slopes = new double[n];
        double[] doubts = new double[n];
        CourseReturn back = new CourseReturn(lines);
        for (int piece = kept.length - 1; piece >= 0; piece--) {
            int from = piece * PIECE;
            CourseState[] states = again(kept[piece], from, Math.min(n, from + PIECE));
            for (int k = from + states.length - 1; k >= from; k--) {
                if (k < n - 1) {
                    back.move(motion(k + 1));
                }
                double[] smoothed = back.smoothed(states[k - from], isRead(k));
                late[k] = smoothed[0];
                slopes[k] = smoothed[1];
                doubts[k] = scale * smoothed[2];
            }
        }
        return new Smoothed(late, slopes, doubts, wander, scale, likelihood, lines);
    }

    /** The states of a piece of the way, from the one that was kept on. */
    private CourseState[] again(CourseState kept, int from, int to) {
        CourseState[] states = new CourseState[to - from];
        CourseState state = kept;
        for (int k = from; k < to; k++) {
            if (k > from) {
                reach(state, k);
            }
            states[k - from] = state.copy();
            if (isRead(k)) {
                state.learn();
            }
        }
        return states;
    }
}
