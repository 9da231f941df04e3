package offtape.core.realign;

import java.util.Arrays;

/**
 * Where each frame of the original lies in its return: a straight line, and what is left of the way
 * of time beside it, given at some frames by value and slope and drawn between them by cubics.
 * Beyond the first and last the nearest value holds.
 */
final class Course implements FoundTrack.Way {

    private final double start;
    private final double step;
    private final double[] frames;
    private final double[] late;
    private final double[] slopes;

    /**
     * A course.
     *
     * @param start where frame 0 lies on the line, frames of the return
     * @param step frames of the return that a frame lasts on the line
     * @param frames at which it is given, rising; none for a straight line
     * @param late by how much it is later than the line there, frames
     * @param slopes how fast that grows there, a ratio
     */
    Course(double start, double step, double[] frames, double[] late, double[] slopes) {
        this.start = start;
        this.step = step;
        this.frames = frames;
        this.late = late;
        this.slopes = slopes;
    }

    /** A straight line. */
    static Course line(double start, double step) {
        return new Course(start, step, new double[0], new double[0], new double[0]);
    }

    double start() {
        return start;
    }

    double step() {
        return step;
    }

    boolean isLine() {
        return frames.length == 0;
    }

    /** The same course that comes later by some frames. */
    Course later(double by) {
        return new Course(start + by, step, frames, late, slopes);
    }

    @Override
    public double at(double frame) {
        return start + step * frame + (isLine() ? 0 : beside(frame, index(frame)));
    }

    /** Where frames one after another lie. */
    void at(long first, double[] out) {
        int k = isLine() ? 0 : index(first);
        for (int i = 0; i < out.length; i++) {
            double frame = (double) first + i;
            double beside = 0;
            if (!isLine()) {
                while (k < frames.length && frames[k] <= frame) {
                    k++;
                }
                beside = beside(frame, k);
            }
            out[i] = start + step * frame + beside;
        }
    }

    /** Number of the first given frame that lies behind. */
    private int index(double frame) {
        int k = Arrays.binarySearch(frames, frame);
        return k >= 0 ? k + 1 : -k - 1;
    }

    private double beside(double frame, int next) {
        if (next == 0) {
            return late[0];
        }
        if (next == frames.length) {
            return late[next - 1];
        }
        double span = frames[next] - frames[next - 1];
        double u = (frame - frames[next - 1]) / span;
        double v = 1 - u;
        return v * v * (1 + 2 * u) * late[next - 1]
                + u * u * (1 + 2 * v) * late[next]
                + span * u * v * (v * slopes[next - 1] - u * slopes[next]);
    }
}
