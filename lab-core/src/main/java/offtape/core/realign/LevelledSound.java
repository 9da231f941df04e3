package offtape.core.realign;

import java.util.List;
import offtape.core.audio.AudioSource;

/** A sound whose channels' gains are taken back, silent outside its length. */
final class LevelledSound implements AudioSource {

    private final AudioSource sound;
    private final double[] gains;
    private final long frames;

    LevelledSound(AudioSource sound, List<Double> gains, long frames) {
        this.sound = sound;
        this.gains = gains.stream().mapToDouble(g -> 1 / g).toArray();
        this.frames = frames;
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
        return frames;
    }

    @Override
    public double[][] read(long startFrame, int count) {
        double[][] out = sound.read(startFrame, count);
        for (int c = 0; c < out.length; c++) {
            for (int i = 0; i < count; i++) {
                boolean isInside = startFrame + i >= 0 && startFrame + i < frames;
                out[c][i] = isInside ? gains[c] * out[c][i] : 0;
            }
        }
        return out;
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
