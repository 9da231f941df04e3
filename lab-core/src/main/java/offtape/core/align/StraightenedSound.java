package offtape.core.align;

import offtape.core.audio.AudioSource;
import offtape.core.dsp.SincInterpolator;

/**
 * A stretch of a recording read at another place and rate, as if it had been recorded so: frame n
 * is what the recording holds at {@code startFrame + n · step}, times a gain. Both channels keep
 * their time against each other. A place that falls on a frame is that frame unchanged.
 */
public final class StraightenedSound implements AudioSource {

    /** What the interpolation reaches to either side. */
    private static final int REACH = 40;

    /** Nearer to whole frames than this no interpolation is made. */
    private static final double WHOLE = 1e-3;

    private final AudioSource recording;
    private final double startFrame;
    private final double step;
    private final double gain;
    private final long frames;

    /**
     * A view of a recording.
     *
     * @param startFrame place of the first frame in the recording, fractional
     * @param step frames of the recording a frame of this sound, near 1
     * @param gain factor on every sample
     * @param frames length
     */
    public StraightenedSound(
            AudioSource recording, double startFrame, double step, double gain, long frames) {
        this.recording = recording;
        this.startFrame = startFrame;
        this.step = step;
        this.gain = gain;
        this.frames = frames;
    }

    @Override
    public int sampleRateHz() {
        return recording.sampleRateHz();
    }

    @Override
    public int channels() {
        return recording.channels();
    }

    @Override
    public long frames() {
        return frames;
    }

    /** Whether samples are taken over without interpolation. */
    public boolean isExact() {
        double last = startFrame + step * frames;
        return isWhole(startFrame) && Math.abs(last - frames - startFrame) < WHOLE;
    }

    private static boolean isWhole(double place) {
        return Math.abs(place - Math.rint(place)) < WHOLE;
    }

    @Override
    public double[][] read(long from, int count) {
        return isExact() ? copied(from, count) : interpolated(from, count);
    }

    private double[][] copied(long from, int count) {
        double[][] block = recording.read(Math.round(startFrame) + from, count);
        for (double[] x : block) {
            for (int i = 0; i < count; i++) {
                x[i] = inside(from + i) ? gain * x[i] : 0;
            }
        }
        return block;
    }

    private double[][] interpolated(long from, int count) {
        double first = startFrame + step * from;
        long base = (long) Math.floor(first) - REACH;
        int length = (int) Math.ceil(step * count) + 2 * REACH + 2;
        double[][] around = recording.read(base, length);
        double[][] block = new double[around.length][count];
        for (int c = 0; c < block.length; c++) {
            for (int i = 0; i < count; i++) {
                double place = startFrame + step * (from + i) - base;
                block[c][i] =
                        inside(from + i) ? gain * SincInterpolator.at(around[c], place) : 0;
            }
        }
        return block;
    }

    private boolean inside(long frame) {
        return frame >= 0 && frame < frames;
    }

    @Override
    public String name() {
        return recording.name();
    }

    @Override
    public void close() {
        recording.close();
    }
}
