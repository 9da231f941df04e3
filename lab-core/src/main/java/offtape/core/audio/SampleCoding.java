package offtape.core.audio;

import java.nio.ByteOrder;
import java.util.Arrays;

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

    private static final double CODE = 0x1p-31;

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
     * Samples of one channel in full-scale units: n-bit PCM is divided by 2^(n−1), so it reaches
     * from −1 to 1 − 2^(1−n).
     *
     * @param from bytes of the file
     * @param first index of the first sample's first byte
     * @param stride bytes from one sample to the next
     * @param out receives {@code count} samples from index {@code to}
     */
    void decode(byte[] from, int first, int stride, double[] out, int to, int count) {
        // One loop a size: a choice for each sample would cost more than the decoding.
        if (isFloating()) {
            floats(from, first, stride, out, to, count);
            return;
        }
        int flip = kind == Kind.UNSIGNED ? 1 << 31 : 0;
        int mask = -1 << (32 - validBits);
        int[] at = places(first);
        switch (bytes) {
            case 1 -> {
                for (int i = 0, a = at[0]; i < count; i++, a += stride) {
                    out[to + i] = ((from[a] << 24 ^ flip) & mask) * CODE;
                }
            }
            case 2 -> {
                for (int i = 0, a = at[1], b = at[0]; i < count; i++, a += stride, b += stride) {
                    int code = from[a] << 24 | (from[b] & 0xFF) << 16;
                    out[to + i] = ((code ^ flip) & mask) * CODE;
                }
            }
            case 3 -> {
                int middle = at[1] - at[2];
                int low = at[0] - at[2];
                for (int i = 0, a = at[2]; i < count; i++, a += stride) {
                    int code =
                            from[a] << 24
                                    | (from[a + middle] & 0xFF) << 16
                                    | (from[a + low] & 0xFF) << 8;
                    out[to + i] = ((code ^ flip) & mask) * CODE;
                }
            }
            default -> {
                for (int i = 0; i < count; i++) {
                    int code = word(from, at, i * stride);
                    out[to + i] = ((code ^ flip) & mask) * CODE;
                }
            }
        }
    }

    private void floats(byte[] from, int first, int stride, double[] out, int to, int count) {
        int[] at = places(first);
        if (bytes == Float.BYTES) {
            for (int i = 0; i < count; i++) {
                out[to + i] = Float.intBitsToFloat(word(from, at, i * stride));
            }
            return;
        }
        int[] upper = Arrays.copyOfRange(at, Integer.BYTES, Long.BYTES);
        for (int i = 0; i < count; i++) {
            long low = word(from, at, i * stride) & 0xFFFF_FFFFL;
            out[to + i] = Double.longBitsToDouble((long) word(from, upper, i * stride) << 32 | low);
        }
    }

    private static int word(byte[] from, int[] at, int beyond) {
        return from[at[3] + beyond] << 24
                | (from[at[2] + beyond] & 0xFF) << 16
                | (from[at[1] + beyond] & 0xFF) << 8
                | from[at[0] + beyond] & 0xFF;
    }

    /** Where the bytes of the first sample lie, the least significant one first. */
    private int[] places(int first) {
        int[] at = new int[bytes];
        for (int k = 0; k < bytes; k++) {
            at[k] = first + (order == ByteOrder.BIG_ENDIAN ? bytes - 1 - k : k);
        }
        return at;
    }
}
