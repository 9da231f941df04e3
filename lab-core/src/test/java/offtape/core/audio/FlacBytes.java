package offtape.core.audio;

import java.io.ByteArrayOutputStream;

/**
 * Writes FLAC streams as RFC 9639 describes them, with checksums by long division: forms that an
 * encoder seldom chooses.
 */
final class FlacBytes {

    static final int LEFT_SIDE = 8;
    static final int SIDE_RIGHT = 9;
    static final int MID_SIDE = 10;

    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private long bits;
    private int held;

    /** How one channel of a block is coded. */
    interface Coding {
        void write(FlacBytes out, long[] x, int bits);
    }

    /** Every sample as it is. */
    static void verbatim(FlacBytes out, long[] x, int bits) {
        out.put(1, 7).put(0, 1);
        for (long sample : x) {
            out.put(sample, bits);
        }
    }

    /** One sample for all. */
    static void constant(FlacBytes out, long[] x, int bits) {
        out.put(0, 7).put(0, 1).put(x[0], bits);
    }

    /** Differences from one sample to the next, in Rice codes with the parameter 3. */
    static void differences(FlacBytes out, long[] x, int bits) {
        out.put(9, 7).put(0, 1).put(x[0], bits);
        out.put(0, 2).put(0, 4).put(3, 4);
        for (int i = 1; i < x.length; i++) {
            long difference = x[i] - x[i - 1];
            long folded = difference < 0 ? -2 * difference - 1 : 2 * difference;
            out.put(1, (int) (folded >> 3) + 1).put(folded & 7, 3);
        }
    }

    /** The mark and the description, which is the last block before the sound. */
    static Bytes head(int rateHz, int channels, int bits, long frames, String md5) {
        FlacBytes head = new FlacBytes().put(0x664C6143, 32).put(1, 1).put(0, 7).put(34, 24);
        head.put(16, 16).put(65_535, 16).put(0, 48);
        head.put(rateHz, 20).put(channels - 1, 3).put(bits - 1, 5).put(frames, 36);
        return new Bytes().raw(head.out.toByteArray()).hex(md5.isEmpty() ? "00".repeat(16) : md5);
    }

    /**
     * One block.
     *
     * @param first its number, or of its first sample if {@code variable}; below 2^11
     * @param assignment number of channels less one, or one of the pairs
     * @param x the subframes as they are coded
     */
    static byte[] block(
            boolean variable, int first, int assignment, int bits, Coding coding, long[]... x) {
        FlacBytes block = new FlacBytes();
        block.put(0x7FFC, 15).put(variable ? 1 : 0, 1).put(7, 4).put(0, 4);
        block.put(assignment, 4).put(0, 3).put(0, 1);
        if (first < 128) {
            block.put(first, 8);
        } else {
            block.put(0xC0 | first >> 6, 8).put(0x80 | first & 0x3F, 8);
        }
        block.put(x[0].length - 1, 16);
        block.put(remainder(block.out.toByteArray(), 8, 0x07), 8);
        int side = assignment == SIDE_RIGHT ? 0 : assignment >= LEFT_SIDE ? 1 : -1;
        for (int c = 0; c < x.length; c++) {
            coding.write(block, x[c], bits + (c == side ? 1 : 0));
        }
        block.put(0, (8 - block.held) % 8);
        return block.put(remainder(block.out.toByteArray(), 16, 0x8005), 16).out.toByteArray();
    }

    private FlacBytes put(long value, int width) {
        for (int i = width - 1; i >= 0; i--) {
            bits = bits << 1 | (i < Long.SIZE ? value >> i & 1 : 0);
            if (++held == 8) {
                out.write((int) bits);
                held = 0;
            }
        }
        return this;
    }

    private static long remainder(byte[] message, int width, int polynomial) {
        long rest = 0;
        for (int i = 0; i < 8 * message.length; i++) {
            long bit = message[i / 8] >> 7 - i % 8 & 1;
            boolean carry = (rest >> width - 1 & 1) != bit;
            rest = (rest << 1 ^ (carry ? polynomial : 0)) & (1L << width) - 1;
        }
        return rest;
    }
}
