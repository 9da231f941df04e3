package offtape.core.audio;

/**
 * How the sound lies in a file: frame after frame, in each one sample of every channel.
 *
 * @param sampleRateHz 1 to 768000
 * @param channels 1 to 64
 * @param coding how a sample lies in the file
 */
record SoundFormat(int sampleRateHz, int channels, SampleCoding coding) {

    /** Bytes of one frame. */
    int frameBytes() {
        return channels * coding.bytes();
    }
}
