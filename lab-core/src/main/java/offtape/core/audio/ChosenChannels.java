package offtape.core.audio;

import java.util.List;

/**
 * One or two channels of a recording that may have more, as from a many-channel interface.
 *
 * @param whole the recording, closed together with this
 * @param numbers which of its channels, counted from 1
 * @param isAskedFor whether somebody chose them, so that nobody needs to be told
 */
public record ChosenChannels(AudioSource whole, List<Integer> numbers, boolean isAskedFor)
        implements AudioSource {

    @Override
    public int sampleRateHz() {
        return whole.sampleRateHz();
    }

    @Override
    public int channels() {
        return numbers.size();
    }

    @Override
    public long frames() {
        return whole.frames();
    }

    @Override
    public double[][] read(long startFrame, int count) {
        double[][] all = whole.read(startFrame, count);
        return numbers.stream().map(n -> all[n - 1]).toArray(double[][]::new);
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
