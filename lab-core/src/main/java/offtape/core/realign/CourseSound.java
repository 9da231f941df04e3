package offtape.core.realign;

import offtape.core.audio.AudioSource;
import offtape.core.dsp.SincInterpolator;
import offtape.core.fault.Background;

/**
 * A return read along a course, so that it lies in time with its original. All channels keep their
 * time against each other.
 */
final class CourseSound implements AudioSource {

    /** What the interpolation reaches to either side. */
    private static final int REACH = 40;

    /** Frames that are interpolated in one go. */
    private static final int PART = 1024;

    private final AudioSource returned;
    private final Course course;
    private final long frames;

    /**
     * A view of a return, which is closed together with it.
     *
     * @param frames length of the original
     */
    CourseSound(AudioSource returned, Course course, long frames) {
        this.returned = returned;
        this.course = course;
        this.frames = frames;
    }

    @Override
    public int sampleRateHz() {
        return returned.sampleRateHz();
    }

    @Override
    public int channels() {
        return returned.channels();
    }

    @Override
    public long frames() {
        return frames;
    }

    @Override
    public double[][] read(long startFrame, int count) {
        if (count == 0) {
            return new double[channels()][0];
        }
        double[] places = new double[count];
        course.at(startFrame, places);
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (double p : places) {
            low = Math.min(low, p);
            high = Math.max(high, p);
        }
        long base = (long) Math.floor(low) - REACH;
        double[][] around = returned.read(base, (int) (Math.ceil(high) - base) + REACH + 2);
        double[][] out = new double[around.length][count];
        Background.range(
                0,
                (count + PART - 1) / PART,
                part -> interpolate(around, places, base, part * PART, out));
        return out;
    }

    private static void interpolate(
            double[][] around, double[] places, long base, int from, double[][] out) {
        int to = Math.min(places.length, from + PART);
        for (int c = 0; c < out.length; c++) {
            for (int i = from; i < to; i++) {
                out[c][i] = SincInterpolator.at(around[c], places[i] - base);
            }
        }
    }

    @Override
    public String name() {
        return returned.name();
    }

    @Override
    public void close() {
        returned.close();
    }
}
