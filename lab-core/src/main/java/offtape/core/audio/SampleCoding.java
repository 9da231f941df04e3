package offtape.core.audio;

import java.nio.ByteBuffer;

/**
 * How one sample lies in the file: least significant byte first, in whole bytes.
 *
 * @param floating IEEE 754 float of 4 or 8 bytes, ±1 full scale; else linear PCM of 1 to 4 bytes
 * @param bytes size of the container
 * @param validBits for PCM, how many of the container's upper bits carry the sample; those below
 *     are ignored
 */
record SampleCoding(boolean floating, int bytes, int validBits) {

    private static final double FULL_SCALE = 0x1p31;

    /**
     * The sample at a byte index, in full-scale units: n-bit PCM is divided by 2^(n−1), so it
     * reaches from −1 to 1 − 2^(1−n).
     */
    double at(ByteBuffer buffer, int index) {
        if (floating) {
            return bytes == Float.BYTES ? buffer.getFloat(index) : buffer.getDouble(index);
        }
        return (leftJustified(buffer, index) & (-1 << (32 - validBits))) / FULL_SCALE;
    }

    private int leftJustified(ByteBuffer buffer, int index) {
        return switch (bytes) {
            // one byte is unsigned: 128 is zero
            case 1 -> (buffer.get(index) ^ 0x80) << 24;
            case 2 -> buffer.getShort(index) << 16;
            case 3 -> buffer.getShort(index) << 8 & 0x00FF_FFFF | buffer.get(index + 2) << 24;
            default -> buffer.getInt(index);
        };
    }
}
