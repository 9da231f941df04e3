package offtape.core.realign;

import java.util.function.LongToDoubleFunction;
import offtape.core.audio.AudioSource;

/** Sound of one channel that is made while it is read, so that hours of it take no memory. */
record RuledSound(String name, int sampleRateHz, long frames, LongToDoubleFunction rule)
        implements AudioSource {

    @Override
    public int channels() {
        return 1;
    }

    @Override
    public double[][] read(long startFrame, int count) {
        double[] x = new double[count];
        for (int i = 0; i < count; i++) {
            long at = startFrame + i;
            x[i] = at < 0 || at >= frames ? 0 : rule.applyAsDouble(at);
        }
        return new double[][] {x};
    }

    @Override
    public void close() {
        // nothing is held open
    }
}
