package offtape.core.model;

import offtape.core.audio.AudioSource;
import offtape.core.random.Draw;

/**
 * White noise of variance 1, normal, each channel its own, from before its beginning to behind its
 * end, so that a filter on it has no ends. The density is 2 over the rate, in squares per hertz.
 */
public final class WhiteNoise implements AudioSource {

    private final int sampleRateHz;
    private final int channels;
    private final long seed;

    /**
     * Noise without end.
     *
     * @param sampleRateHz rate, hertz
     * @param channels 1 or more
     * @param seed which noise
     */
    public WhiteNoise(int sampleRateHz, int channels, long seed) {
        this.sampleRateHz = sampleRateHz;
        this.channels = channels;
        this.seed = seed;
    }

    @Override
    public int sampleRateHz() {
        return sampleRateHz;
    }

    @Override
    public int channels() {
        return channels;
    }

    @Override
    public long frames() {
        return Long.MAX_VALUE / 4;
    }

    @Override
    public double[][] read(long startFrame, int count) {
        double[][] out = new double[channels][count];
        for (int c = 0; c < channels; c++) {
            Draw draw = Draw.ofSeed(seed + c);
            for (int i = 0; i < count; i++) {
                out[c][i] = draw.normal(startFrame + i);
            }
        }
        return out;
    }

    @Override
    public String name() {
        return "noise";
    }

    @Override
    public void close() {
        // nothing is held open
    }
}
