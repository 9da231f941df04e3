package offtape.cli.command;

import java.io.ByteArrayOutputStream;

/** The bytes of a FLAC file (RFC 9639) of 24 bits in which every sample lies as it is. */
final class Flac {

    private static final int BITS = 24;
    private static final int BLOCK = 4096;

    private final ByteArrayOutputStream out = new ByteArrayOutputStream();

    private Flac() {}

    /** A whole file; samples round to the nearest step. */
    static byte[] of(int rate, double[]... sound) {
        Flac file = new Flac();
        file.number(0x664C6143, 4).number(0x80, 1).number(34, 3);
        file.number(BLOCK, 2).number(BLOCK, 2).number(0, 6);
        long shape = (long) rate << 44 | sound.length - 1L << 41 | BITS - 1L << 36;
        file.number(shape | sound[0].length, 8).number(0, 16);
        for (int from = 0, n = 0; from < sound[0].length; from += BLOCK, n++) {
            int count = Math.min(BLOCK, sound[0].length - from);
            file.out.writeBytes(block(n, from, count, sound));
        }
        return file.out.toByteArray();
    }

    /** Head with its checksum, one verbatim subframe a channel, checksum. */
    private static byte[] block(int number, int from, int count, double[]... sound) {
        Flac block = new Flac();
        block.number(0xFFF8, 2).number(0x70, 1).number(sound.length - 1L << 4, 1);
        if (number < 0x80) {
            block.number(number, 1);
        } else {
            block.number(0xC0 | number >> 6, 1).number(0x80 | number & 0x3F, 1);
        }
        block.number(count - 1L, 2);
        block.number(remainder(block.out.toByteArray(), 8, 0x07), 1);
        for (double[] channel : sound) {
            block.number(2, 1);
            for (int i = from; i < from + count; i++) {
                block.number(code(channel[i]), BITS / 8);
            }
        }
        return block.number(remainder(block.out.toByteArray(), 16, 0x8005), 2).out.toByteArray();
    }

    private static long code(double x) {
        double scale = Math.pow(2, BITS - 1);
        return (long) Math.max(-scale, Math.min(scale - 1, Math.rint(x * scale)));
    }

    private Flac number(long value, int bytes) {
        for (int i = bytes - 1; i >= 0; i--) {
            out.write(i < Long.BYTES ? (int) (value >> 8 * i) : 0);
        }
        return this;
    }

    private static long remainder(byte[] message, int width, int polynomial) {
        int rest = 0;
        for (byte octet : message) {
            rest ^= (octet & 0xFF) << width - 8;
            for (int bit = 0; bit < 8; bit++) {
                rest = rest << 1 ^ (rest >> width - 1 & 1) * (1 << width | polynomial);
            }
        }
        return rest;
    }
}
