package offtape.core.align;

import offtape.core.audio.AudioSource;

/**
 * A sound of two channels at 4 kHz, 1, 2, 3 … and its negative, that tells whether it was closed.
 */
final class Closed implements AudioSource {

    private final int length;
    private boolean isClosed;

    Closed(int length) {
        this.length = length;
    }

    boolean isClosed() {
        return isClosed;
    }

    @Override
    public int sampleRateHz() {
        return HeardMark.RATE;
    }

    @Override
    public int channels() {
        return 2;
    }

    @Override
    public long frames() {
        return length;
    }

    @Override
    public double[][] read(long startFrame, int count) {
        double[][] x = new double[2][count];
        for (int i = 0; i < count; i++) {
            long frame = startFrame + i;
            x[0][i] = frame >= 0 && frame < length ? frame + 1 : 0;
            x[1][i] = -x[0][i];
        }
        return x;
    }

    @Override
    public String name() {
        return "steps";
    }

    @Override
    public void close() {
        isClosed = true;
    }
}
