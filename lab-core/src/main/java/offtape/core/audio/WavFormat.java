package offtape.core.audio;

/**
 * The format of a WAV file to be written.
 *
 * @param sampleRateHz frames per second, 1 to 768000
 * @param channels 1 to 64
 * @param encoding how samples are written
 */
public record WavFormat(int sampleRateHz, int channels, WavEncoding encoding) {

    static final int MOST_CHANNELS = 64;
    static final int HIGHEST_RATE_HZ = 768_000;

    /**
     * Checks the ranges.
     *
     * @throws IllegalArgumentException if rate or channels are out of range
     */
    public WavFormat {
        if (sampleRateHz < 1 || sampleRateHz > HIGHEST_RATE_HZ) {
            throw new IllegalArgumentException("sample rate of " + sampleRateHz + " Hz");
        }
        if (channels < 1 || channels > MOST_CHANNELS) {
            throw new IllegalArgumentException(channels + " channels");
        }
    }

    /** Bytes of one frame. */
    int frameBytes() {
        return channels * encoding.bits() / 8;
    }
}
