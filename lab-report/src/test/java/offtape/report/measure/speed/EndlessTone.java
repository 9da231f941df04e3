package offtape.report.measure.speed;

import java.util.function.DoubleUnaryOperator;
import offtape.core.audio.AudioSource;

/**
 * Sound that is made while it is read, so that its length takes no memory, and that refuses to be
 * read in long stretches, which would take some.
 */
final class EndlessTone implements AudioSource {

    private static final int MOST_AT_ONCE = 1 << 16;

    private final int rate;
    private final long frames;
    private final DoubleUnaryOperator sound;

    EndlessTone(int rate, double seconds, DoubleUnaryOperator sound) {
        this.rate = rate;
        this.frames = (long) (seconds * rate);
        this.sound = sound;
    }

    @Override
    public int sampleRateHz() {
        return rate;
    }

    @Override
    public int channels() {
        return 1;
    }

    @Override
    public long frames() {
        return frames;
    }

    @Override
    public double[][] read(long startFrame, int count) {
        if (count > MOST_AT_ONCE) {
            throw new AssertionError(count + " frames are read at once");
        }
        double[][] x = new double[1][count];
        for (int i = 0; i < count; i++) {
            long at = startFrame + i;
            x[0][i] = at < 0 || at >= frames ? 0 : sound.applyAsDouble((double) at / rate);
        }
        return x;
    }

    @Override
    public String name() {
        return "endless";
    }

    @Override
    public void close() {
        // nothing is held open
    }
}
