package offtape.report.benchmark;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import offtape.core.audio.AudioSource;

/**
 * A FLAC stream of 24-bit stereo after RFC 9639, coded as encoders code most blocks of such sound:
 * a fixed predictor of second order, and Rice codes whose parameter changes sixteen times a block.
 * Carries the digest of its samples.
 */
final class FlacStream {

    private static final int BITS = 24;
    private static final int BLOCK = 4096;
    private static final int PARTITION_BITS = 4;
    private static final int ORDER = 2;

    private final AudioSource sound;
    private final BitBuffer out = new BitBuffer();

    /** The stream of a sound of two channels. */
    FlacStream(AudioSource sound) {
        this.sound = sound;
    }

    /** The whole file. */
    byte[] bytes() {
        MessageDigest digest = md5();
        int frames = Math.toIntExact(sound.frames());
        BitBuffer blocks = new BitBuffer();
        for (int at = 0; at < frames; at += BLOCK) {
            int[][] x = steps(sound.read(at, Math.min(BLOCK, frames - at)));
            digest.update(littleEndian(x));
            block(blocks, at / BLOCK, x);
        }
        out.put(0x664C6143, 32).put(0x80, 8).put(34, 24);
        out.put(BLOCK, 16).put(BLOCK, 16).put(0, 24).put(0, 24);
        out.put(sound.sampleRateHz(), 20).put(1, 3).put(BITS - 1, 5).put(0, 4).put(frames, 32);
        for (byte octet : digest.digest()) {
            out.put(octet & 0xFF, 8);
        }
        return out.append(blocks).bytes();
    }

    private static void block(BitBuffer out, int number, int[][] x) {
        int start = out.length();
        boolean whole = x[0].length == BLOCK;
        out.put(0xFFF8, 16).put(whole ? 12 : 7, 4).put(0, 4).put(1, 4).put(6, 3).put(0, 1);
        number(out, number);
        if (!whole) {
            out.put(x[0].length - 1, 16);
        }
        out.put(out.remainder(start, 8, 0x07), 8);
        for (int[] channel : x) {
            subframe(out, channel, whole ? PARTITION_BITS : 0);
        }
        out.align();
        out.put(out.remainder(start, 16, 0x8005), 16);
    }

    /** A block's number in one to three bytes, as UTF-8 codes characters. */
    private static void number(BitBuffer out, int number) {
        if (number < 1 << 7) {
            out.put(number, 8);
        } else if (number < 1 << 11) {
            out.put(0xC0 | number >> 6, 8).put(0x80 | number & 0x3F, 8);
        } else {
            out.put(0xE0 | number >> 12, 8).put(0x80 | number >> 6 & 0x3F, 8);
            out.put(0x80 | number & 0x3F, 8);
        }
    }

    private static void subframe(BitBuffer out, int[] x, int partitionBits) {
        out.put(8 + ORDER, 7).put(0, 1);
        int first = Math.min(ORDER, x.length);
        for (int i = 0; i < first; i++) {
            out.put(x[i], BITS);
        }
        out.put(1, 2).put(partitionBits, 4);
        int size = x.length >> partitionBits;
        for (int from = 0; from < x.length; from += size) {
            partition(out, x, Math.max(first, from), from + size);
        }
    }

    private static void partition(BitBuffer out, int[] x, int from, int to) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += Math.abs((double) rest(x, i));
        }
        double mean = sum / Math.max(1, to - from);
        int parameter = (int) Math.max(0, Math.floor(Math.log(mean + 1) / Math.log(2)));
        out.put(parameter, 5);
        for (int i = from; i < to; i++) {
            int rest = rest(x, i);
            out.rice(rest << 1 ^ rest >> 31, parameter);
        }
    }

    private static int rest(int[] x, int i) {
        return x[i] - 2 * x[i - 1] + x[i - 2];
    }

    private static int[][] steps(double[][] samples) {
        int[][] steps = new int[samples.length][samples[0].length];
        for (int c = 0; c < steps.length; c++) {
            for (int i = 0; i < steps[c].length; i++) {
                steps[c][i] = (int) Math.rint(samples[c][i] * (1 << BITS - 1));
            }
        }
        return steps;
    }

    private static byte[] littleEndian(int[][] x) {
        byte[] bytes = new byte[x.length * x[0].length * BITS / 8];
        int at = 0;
        for (int i = 0; i < x[0].length; i++) {
            for (int[] channel : x) {
                for (int shift = 0; shift < BITS; shift += 8) {
                    bytes[at++] = (byte) (channel[i] >> shift);
                }
            }
        }
        return bytes;
    }

    private static MessageDigest md5() {
        try {
            return MessageDigest.getInstance("MD5");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
