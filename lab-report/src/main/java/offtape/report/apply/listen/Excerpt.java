package offtape.report.apply.listen;

import offtape.core.audio.AudioSource;

/**
 * A stretch of a sound.
 *
 * @param whole the sound, closed together with this
 * @param from its first frame; may lie before the beginning, where there is silence
 * @param frames its length
 */
record Excerpt(AudioSource whole, long from, long frames) implements AudioSource {

    @Override
    public int sampleRateHz() {
        return whole.sampleRateHz();
    }

    @Override
    public int channels() {
        return whole.channels();
    }

    @Override
    public double[][] read(long startFrame, int count) {
        return whole.read(from + startFrame, count);
    }

    @Override
    public String name() {
        return whole.name();
    }

    @Override
    public void close() {
        whole.close();
    }
}
