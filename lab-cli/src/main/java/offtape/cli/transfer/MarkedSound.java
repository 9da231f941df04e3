package offtape.cli.transfer;

import offtape.core.align.AlignmentMark;
import offtape.core.audio.AudioSource;

/**
 * A stem as it is sent: a mark, a pause, the stem at its drive, a pause, the mark again. Both pauses
 * are long enough for what a machine rings and delays.
 */
final class MarkedSound implements AudioSource {

    /** Peak of the marks, 18 dB under full scale: well below what saturates tape. */
    static final double MARK_PEAK = Math.pow(10, -18 / 20.0);

    private static final double PAUSE_S = 0.7;

    private final AudioSource stem;
    private final double drive;
    private final double[] mark;
    private final long pause;

    /**
     * A marked stem.
     *
     * @param drive factor on the stem's samples
     */
    MarkedSound(AudioSource stem, double drive) {
        this.stem = stem;
        this.drive = drive;
        this.mark = AlignmentMark.samples(stem.sampleRateHz(), MARK_PEAK);
        this.pause = Math.round(PAUSE_S * stem.sampleRateHz());
    }

    /** Where the stem begins. */
    long stemFrame() {
        return mark.length + pause;
    }

    /** Where the second mark begins. */
    long secondMarkFrame() {
        return stemFrame() + stem.frames() + pause;
    }

    @Override
    public int sampleRateHz() {
        return stem.sampleRateHz();
    }

    @Override
    public int channels() {
        return stem.channels();
    }

    @Override
    public long frames() {
        return secondMarkFrame() + mark.length;
    }

    @Override
    public double[][] read(long startFrame, int count) {
        double[][] block = stem.read(startFrame - stemFrame(), count);
        for (double[] x : block) {
            for (int i = 0; i < count; i++) {
                x[i] = drive * x[i] + marks(startFrame + i);
            }
        }
        return block;
    }

    private double marks(long frame) {
        if (frame < 0) {
            return 0;
        }
        if (frame < mark.length) {
            return mark[(int) frame];
        }
        long second = frame - secondMarkFrame();
        return second >= 0 && second < mark.length ? mark[(int) second] : 0;
    }

    @Override
    public String name() {
        return stem.name();
    }

    @Override
    public void close() {
        stem.close();
    }
}
