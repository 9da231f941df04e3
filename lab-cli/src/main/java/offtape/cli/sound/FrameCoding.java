package offtape.cli.sound;

import java.util.Arrays;

/**
 * Chosen channels to frames of a device and back, little-endian integers of 16, 24 or 32 bits.
 * Whole steps of the width pass unchanged.
 */
final class FrameCoding {

    private final int bytes;
    private final int width;
    private final int[] places;
    private final double scale;

    FrameCoding(int bits, int width, ChannelPair channels) {
        this.bytes = bits / 8;
        this.width = width;
        this.places = channels.numbers().stream().mapToInt(n -> n - 1).toArray();
        this.scale = Math.scalb(1.0, bits - 1);
    }

    int channels() {
        return places.length;
    }

    int frameBytes() {
        return bytes * width;
    }

    /** Writes frames from a place in the block; channels that were not chosen are zero. */
    void encode(double[][] block, int from, int frames, byte[] out) {
        Arrays.fill(out, 0, frames * frameBytes(), (byte) 0);
        for (int c = 0; c < places.length; c++) {
            double[] x = block[c];
            int at = places[c] * bytes;
            for (int i = 0; i < frames; i++) {
                put(x[from + i], out, at);
                at += frameBytes();
            }
        }
    }

    private void put(double sample, byte[] out, int at) {
        long code = (long) Math.max(-scale, Math.min(scale - 1, Math.rint(sample * scale)));
        for (int b = 0; b < bytes; b++) {
            out[at + b] = (byte) (code >> 8 * b);
        }
    }

    /** Reads frames into a place of the block. */
    void decode(byte[] in, int frames, double[][] block, int from) {
        for (int c = 0; c < places.length; c++) {
            double[] x = block[c];
            int at = places[c] * bytes;
            for (int i = 0; i < frames; i++) {
                x[from + i] = get(in, at);
                at += frameBytes();
            }
        }
    }

    private double get(byte[] in, int at) {
        int code = in[at + bytes - 1];
        for (int b = bytes - 2; b >= 0; b--) {
            code = code << 8 | in[at + b] & 0xff;
        }
        return code / scale;
    }
}
