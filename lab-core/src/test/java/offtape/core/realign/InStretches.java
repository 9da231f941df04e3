package offtape.core.realign;

import offtape.core.audio.AudioSource;

/**
 * A sound that refuses to be read in long stretches, as whoever reads all of it at once would do.
 *
 * @param most frames that may be read at once
 */
record InStretches(AudioSource sound, int most) implements AudioSource {

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
        if (count > most) {
            throw new AssertionError(count + " frames are read at once, more than " + most);
        }
        return sound.read(startFrame, count);
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
