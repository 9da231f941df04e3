package offtape.core.audio;

/** How samples are written to a WAV file. */
public enum WavEncoding {
    /** Linear PCM of 16 bits. */
    PCM_16(16, false),
    /** Linear PCM of 24 bits. */
    PCM_24(24, false),
    /** IEEE 754 float of 32 bits. */
    FLOAT_32(32, true);

    private final int bits;
    private final boolean floating;

    WavEncoding(int bits, boolean floating) {
        this.bits = bits;
        this.floating = floating;
    }

    /** Size of a sample in bits. */
    public int bits() {
        return bits;
    }

    /** Whether samples are floating-point, so that they may exceed full scale. */
    public boolean isFloating() {
        return floating;
    }
}
