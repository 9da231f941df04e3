package offtape.core.audio;

/**
 * Dither of triangular density over ±1 quantisation step: it makes the quantisation error's mean
 * and power independent of the signal at the price of three times the error's power (4.77 dB)
 * (Lipshitz, Wannamaker, Vanderkooy, J. Audio Eng. Soc. 40 (1992) 355). The generator is SplitMix64
 * (Steele, Lea, Flood, OOPSLA 2014), written out so that a seed means the same bytes for ever.
 */
public final class TpdfDither {

    private static final long GOLDEN_GAMMA = 0x9E37_79B9_7F4A_7C15L;

    private long state;

    /** A generator; the same seed gives the same values. */
    public TpdfDither(long seed) {
        this.state = seed;
    }

    /** The next value in quantisation steps, between −1 and 1. */
    public double nextSteps() {
        return unit() - unit();
    }

    private double unit() {
        return (nextLong() >>> 11) * 0x1p-53;
    }

    /** The generator's next 64 bits. */
    long nextLong() {
        state += GOLDEN_GAMMA;
        long z = state;
        z = (z ^ z >>> 30) * 0xBF58_476D_1CE4_E5B9L;
        z = (z ^ z >>> 27) * 0x94D0_49BB_1331_11EBL;
        return z ^ z >>> 31;
    }
}
