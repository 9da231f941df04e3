package offtape.report.measure.speed;

import java.util.function.DoubleUnaryOperator;
import offtape.core.audio.AudioSource;

/** Sound that is made while it is read, so that its length takes no memory. */
final class EndlessTone implements AudioSource {

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
