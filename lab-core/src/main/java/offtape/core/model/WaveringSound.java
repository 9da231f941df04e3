package offtape.core.model;

import offtape.core.audio.AudioSource;
import offtape.core.dsp.SincInterpolator;

/**
 * A sound whose time wavers: what is heard at a moment t is what lies at t + d(t), where d is the
 * integral of the speed deviation. Its length stays.
 */
public final class WaveringSound implements AudioSource {

    /** Samples to either side that an interpolated value needs. */
    private static final int ROOM = 40;

    private static final int STRETCH = 1 << 15;

    private final AudioSource sound;
    private final AudioSource ahead;

    /**
     * A wavering sound.
     *
     * @param sound what wavers
     * @param ahead d in seconds, one channel of a lower rate, without end, without content near
     *     half its rate
     */
    public WaveringSound(AudioSource sound, AudioSource ahead) {
        this.sound = sound;
        this.ahead = ahead;
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
        return sound.frames();
    }

    @Override
    public double[][] read(long startFrame, int count) {
        double[][] out = new double[channels()][count];
        for (int done = 0; done < count; done += STRETCH) {
            int some = Math.min(STRETCH, count - done);
            double[] frames = aheadFrames(startFrame + done, some);
            int margin = ROOM;
            for (double f : frames) {
                margin = Math.max(margin, (int) Math.ceil(Math.abs(f)) + ROOM);
            }
            double[][] x = sound.read(startFrame + done - margin, some + 2 * margin);
            for (int c = 0; c < out.length; c++) {
                for (int i = 0; i < some; i++) {
                    out[c][done + i] = SincInterpolator.at(x[c], margin + i + frames[i]);
                }
            }
        }
        return out;
    }

    private double[] aheadFrames(long startFrame, int count) {
        double ratio = (double) ahead.sampleRateHz() / sampleRateHz();
        long first = (long) Math.floor(startFrame * ratio) - ROOM;
        int length = (int) Math.ceil(count * ratio) + 2 * ROOM + 2;
        double[] coarse = ahead.read(first, length)[0];
        double[] frames = new double[count];
        for (int i = 0; i < count; i++) {
            double place = (startFrame + i) * ratio - first;
            frames[i] = sampleRateHz() * SincInterpolator.at(coarse, place);
        }
        return frames;
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
