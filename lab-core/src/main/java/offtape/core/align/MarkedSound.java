package offtape.core.align;

import offtape.core.audio.AudioSource;

/**
 * A sound with marks for its way through a machine: a mark, a pause, the sound, a pause, the mark
 * again. In the pauses the machine rings out, and what is heard there is its noise.
 */
public final class MarkedSound implements AudioSource {

    private static final double PAUSE_S = 0.5;

    private final AudioSource sound;
    private final double gain;
    private final double markPeak;
    private final double[] mark;
    private final long pause;

    /**
     * A marked sound.
     *
     * @param sound closed together with this
     * @param gain factor on its samples
     * @param markPeak highest magnitude of the marks, full-scale units
     */
    public MarkedSound(AudioSource sound, double gain, double markPeak) {
        this.sound = sound;
        this.gain = gain;
        this.markPeak = markPeak;
        this.mark = new AlignmentMark(sound.sampleRateHz()).samples();
        this.pause = soundFrame(sound.sampleRateHz()) - mark.length;
    }

    /** Highest magnitude of the marks. */
    double markPeak() {
        return markPeak;
    }

    /** Where the sound begins at a sample rate. */
    public static long soundFrame(int sampleRateHz) {
        return new AlignmentMark(sampleRateHz).frames() + Math.round(PAUSE_S * sampleRateHz);
    }

    /** Where the sound begins. */
    long soundFrame() {
        return mark.length + pause;
    }

    /** Where the second mark begins; the first one begins at 0. */
    long secondMarkFrame() {
        return soundFrame() + sound.frames() + pause;
    }

    @Override
    public int sampleRateHz() {
        return sound.sampleRateHz();
    }

    @Override
    public int channels() {
        return sound.channels();
    }

    @Override
    public long frames() {
        return secondMarkFrame() + mark.length;
    }

    @Override
    public double[][] read(long startFrame, int count) {
        double[][] block = sound.read(startFrame - soundFrame(), count);
        for (double[] x : block) {
            for (int i = 0; i < count; i++) {
                x[i] = gain * x[i] + markPeak * mark(startFrame + i);
            }
        }
        return block;
    }

    private double mark(long frame) {
        long behind = frame - secondMarkFrame();
        long place = behind >= 0 ? behind : frame;
        return place >= 0 && place < mark.length ? mark[(int) place] : 0;
    }

    @Override
    public String name() {
        return sound.name();
    }

    @Override
    public void close() {
        sound.close();
    }
}
