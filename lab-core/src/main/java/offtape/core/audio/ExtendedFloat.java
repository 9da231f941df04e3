package offtape.core.audio;

import java.nio.ByteBuffer;

/**
 * The 80-bit float in which AIFF states a rate (IEEE 754 double extended): sign and exponent, bias
 * 16383, in 2 bytes, then 64 bits of significand with its leading one.
 */
final class ExtendedFloat {

    private static final int BIAS = 16_383;

    private ExtendedFloat() {}

    /**
     * The number at a place of a buffer, most significant byte first.
     *
     * @return what it stands for, rounded to double; 0 for what is negative or no number
     */
    static double at(ByteBuffer buffer, int index) {
        int exponent = buffer.getShort(index);
        if (exponent < 0 || exponent == 0x7FFF) {
            return 0;
        }
        long significand = buffer.getLong(index + 2);
        double upper = significand >>> 11;
        return Math.scalb(upper, exponent - BIAS - 63 + 11);
    }
}
