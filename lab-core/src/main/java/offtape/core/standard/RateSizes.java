package offtape.core.standard;

import offtape.core.dsp.RealFft;

/** Sizes of transforms that hold a time at a sample rate. */
final class RateSizes {

    private RateSizes() {}

    /** The smallest power of two that holds so many seconds at that rate. */
    static int powerOfTwo(double seconds, double sampleRateHz) {
        return RealFft.nextPowerOfTwo((int) Math.ceil(seconds * sampleRateHz));
    }
}
