package offtape.core.audio;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/**
 * How one sample lies in the file, in whole bytes.
 *
 * @param kind what the bytes mean
 * @param order which byte comes first
 * @param bytes size of the container: 1 to 4, for float 4 or 8
 * @param validBits for whole numbers, how many of the container's upper bits carry the sample;
 *     those below are ignored
 */
record SampleCoding(Kind kind, ByteOrder order, int bytes, int validBits) {

    private static final double FULL_SCALE = 0x1p31;

    /** What the bytes mean. */
    enum Kind {
        /** Linear PCM in two's complement. */
        SIGNED,
        /** Linear PCM with zero at half of the range. */
        UNSIGNED,
        /** IEEE 754 float, ±1 full scale. */
        FLOAT
    }

    /** Linear PCM in two's complement, in the fewest bytes that hold the bits. */
    static SampleCoding signed(int bits, ByteOrder order) {
        return new SampleCoding(Kind.SIGNED, order, (bits + 7) / 8, bits);
    }

    /** Float of 32 or 64 bits. */
    static SampleCoding floating(int bits, ByteOrder order) {
        return new SampleCoding(Kind.FLOAT, order, bits / 8, bits);
    }

    boolean isFloating() {
        return kind == Kind.FLOAT;
    }

    /**
     * The sample at a byte index of a buffer of this byte order, in full-scale units: n-bit PCM is
     * divided by 2^(n−1), so it reaches from −1 to 1 − 2^(1−n).
     */
    double at(ByteBuffer buffer, int index) {
        if (isFloating()) {
            return bytes == Float.BYTES ? buffer.getFloat(index) : buffer.getDouble(index);
        }
        int code = leftJustified(buffer, index) ^ (kind == Kind.UNSIGNED ? 1 << 31 : 0);
        return (code & (-1 << (32 - validBits))) / FULL_SCALE;
    }

    private int leftJustified(ByteBuffer buffer, int index) {
        return switch (bytes) {
            case 1 -> buffer.get(index) << 24;
            case 2 -> buffer.getShort(index) << 16;
            case 3 -> threeBytes(buffer, index);
            default -> buffer.getInt(index);
        };
    }

    private int threeBytes(ByteBuffer buffer, int index) {
        if (order == ByteOrder.BIG_ENDIAN) {
            return buffer.getShort(index) << 16 | (buffer.get(index + 2) & 0xFF) << 8;
        }
        return buffer.getShort(index) << 8 & 0x00FF_FFFF | buffer.get(index + 2) << 24;
    }
}
