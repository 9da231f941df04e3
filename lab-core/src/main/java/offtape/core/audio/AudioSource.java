package offtape.core.audio;

import java.io.Closeable;

/**
 * Sound that can be read in stretches from any place. Samples are doubles in full-scale units: ±1
 * is full scale, so a sine of peak 1 has a level of 0 dBFS. Implementations are safe for reading
 * from several threads at once.
 */
public interface AudioSource extends Closeable {

    /** Frames per second, in hertz. */
    int sampleRateHz();

    /** Number of channels, at least one. */
    int channels();

    /** Length in frames, 0 or more. */
    long frames();

    /**
     * Reads one stretch.
     *
     * @param startFrame first frame; may lie before the beginning or after the end
     * @param count number of frames, 0 or more
     * @return one array a channel, each of length {@code count}, owned by the caller; frames
     *     outside the recording are zero
     * @throws offtape.core.fault.UnusableInputException if the file can no longer be read
     */
    double[][] read(long startFrame, int count);

    /** A short name for messages, usually the file name. */
    String name();

    @Override
    void close();
}
