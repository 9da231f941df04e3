package offtape.cli.sound;

/**
 * An open stream. One thread may play while another records. Samples are in full-scale units, one
 * array a channel that was asked for; all other channels of the device stay silent. Playing and
 * recording allocate nothing.
 */
public interface SoundStream extends AutoCloseable {

    /** Frames a second, as asked for. */
    int sampleRateHz();

    /** Width of the samples that come from the device, or go to it if none is recorded, bits. */
    int bits();

    /** How many channels are played; 0 if none was asked for. */
    int outputs();

    /** How many channels are recorded; 0 if none was asked for. */
    int inputs();

    /** Begins recording; what was asked for comes in from now on. */
    void startRecording();

    /** Begins playing. */
    void startPlaying();

    /**
     * Plays frames; waits until the system has taken them.
     *
     * @param block one array a channel; magnitudes above 1 are limited to 1
     * @throws SoundTroubleException if the device was lost
     */
    void play(double[][] block, int frames);

    /**
     * Waits for frames and takes them.
     *
     * @param block one array a channel, filled from the beginning
     * @return how many frames came, {@code frames} unless the stream was stopped
     * @throws SoundTroubleException if the device was lost
     */
    int record(double[][] block, int frames);

    /** How often the system ran out of sound to play so far, as far as it tells. */
    long underruns();

    /** How often recorded sound was lost so far, as far as the system tells. */
    long overruns();

    /** Falls silent at once; waiting calls of play and record come back. */
    void stop();

    /** Lets what was handed over be heard to its end. */
    void drain();

    @Override
    void close();
}
