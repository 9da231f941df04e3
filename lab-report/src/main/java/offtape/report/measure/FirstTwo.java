package offtape.report.measure;

import java.util.Arrays;
import offtape.core.audio.AudioSource;

/** The first two channels of a recording with more, as from a many-channel interface. */
record FirstTwo(AudioSource whole) implements AudioSource {

    /** The recording itself if it has no more than two channels. */
    static AudioSource of(AudioSource recording) {
        return recording.channels() > 2 ? new FirstTwo(recording) : recording;
    }

    @Override
    public int sampleRateHz() {
        return whole.sampleRateHz();
    }

    @Override
    public int channels() {
        return 2;
    }

    @Override
    public long frames() {
        return whole.frames();
    }

    @Override
    public double[][] read(long startFrame, int count) {
        return Arrays.copyOf(whole.read(startFrame, count), 2);
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
