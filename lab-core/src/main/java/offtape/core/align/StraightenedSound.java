package offtape.core.align;

import offtape.core.audio.AudioSource;
import offtape.core.dsp.SincInterpolator;

/**
 * A stretch of a recording read at another place and rate, as if it had been recorded so: frame n
 * is what the recording holds at {@code start + n · step}, times a gain. All channels keep their
 * time against each other. Where start and step are whole no sample is interpolated.
 */
public final class StraightenedSound implements AudioSource {

    /** What the interpolation reaches to either side. */
    private static final int REACH = 40;

    private final AudioSource recording;
    private final double startFrame;
    private final double step;
    private final double[] gains;
    private final long frames;

    /**
     * A view of a recording, which is closed together with it.
     *
     * @param alignment where the sound lies; its gains are taken back, with their sign
     * @param drive factor with which it was sent, which is taken back too
     * @param frames length
     */
    public StraightenedSound(
            AudioSource recording, Alignment alignment, double drive, long frames) {
        this.recording = recording;
        this.startFrame = alignment.startFrame();
        this.step = alignment.step();
        this.gains = alignment.gains().stream().mapToDouble(g -> 1 / (g * drive)).toArray();
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

    @Override
    public double[][] read(long from, int count) {
        boolean isWhole = step == 1 && startFrame == Math.rint(startFrame);
        double[][] block = isWhole ? copied(from, count) : interpolated(from, count);
        for (int c = 0; c < block.length; c++) {
            for (int i = 0; i < count; i++) {
                boolean isInside = from + i >= 0 && from + i < frames;
                block[c][i] = isInside ? gains[c] * block[c][i] : 0;
            }
        }
        return block;
    }

    private double[][] copied(long from, int count) {
        return recording.read((long) startFrame + from, count);
    }

    private double[][] interpolated(long from, int count) {
        long base = (long) Math.floor(startFrame + step * from) - REACH;
        int length = (int) Math.ceil(step * count) + 2 * REACH + 2;
        double[][] around = recording.read(base, length);
        double[][] block = new double[around.length][count];
        for (int c = 0; c < block.length; c++) {
            for (int i = 0; i < count; i++) {
                double place = startFrame + step * (from + i) - base;
                block[c][i] = SincInterpolator.at(around[c], place);
            }
        }
        return block;
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
