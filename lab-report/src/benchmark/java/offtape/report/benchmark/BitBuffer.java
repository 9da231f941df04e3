package offtape.report.benchmark;

import java.util.Arrays;

/** Bits put after one another, most significant first, into bytes. */
final class BitBuffer {

    private byte[] bytes = new byte[1 << 16];
    private int length;
    private long held;
    private int bits;

    /**
     * Appends the lowest bits of a value.
     *
     * @param width 0 to 32
     */
    BitBuffer put(int value, int width) {
        held = held << width | value & (1L << width) - 1;
        bits += width;
        while (bits >= 8) {
            bits -= 8;
            if (length == bytes.length) {
                bytes = Arrays.copyOf(bytes, 2 * length);
            }
            bytes[length++] = (byte) (held >> bits);
        }
        return this;
    }

    /** A value not below 0 as a Rice code: its upper part in zeros and a one, the rest as it is. */
    void rice(int value, int parameter) {
        int zeros = value >>> parameter;
        for (; zeros >= 32; zeros -= 32) {
            put(0, 32);
        }
        put(1, zeros + 1);
        put(value, parameter);
    }

    /** Fills the last byte with zeros. */
    void align() {
        put(0, (8 - bits) % 8);
    }

    /** Appends whole bytes. */
    BitBuffer append(BitBuffer other) {
        byte[] all = Arrays.copyOf(bytes(), length + other.length);
        System.arraycopy(other.bytes, 0, all, length, other.length);
        bytes = all;
        length = all.length;
        return this;
    }

    /** Number of whole bytes. */
    int length() {
        return length;
    }

    /** What is held so far. */
    byte[] bytes() {
        return Arrays.copyOf(bytes, length);
    }

    /** The cyclic remainder of what follows a place, for a check of 8 or 16 bits. */
    int remainder(int start, int width, int polynomial) {
        int rest = 0;
        for (int i = start; i < length; i++) {
            rest ^= (bytes[i] & 0xFF) << width - 8;
            for (int bit = 0; bit < 8; bit++) {
                boolean high = (rest >> width - 1 & 1) != 0;
                rest = (rest << 1 ^ (high ? polynomial : 0)) & (1 << width) - 1;
            }
        }
        return rest;
    }
}
