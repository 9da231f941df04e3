package offtape.cli.command;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;

/** The bytes of WAV files in the forms that recorders and workstations write. */
enum Wav {
    PCM_16("RIFF", 1, 16, false),
    PCM_24("RIFF", 1, 24, false),
    PCM_32("RIFF", 1, 32, false),
    FLOAT_32("RIFF", 3, 32, false),
    FLOAT_64("RIFF", 3, 64, false),
    EXTENSIBLE_24("RIFF", 1, 24, true),
    RF64_24("RF64", 1, 24, false),
    BW64_FLOAT("BW64", 3, 32, true);

    /** Where the sample rate stands in a file with the plain head. */
    static final int RATE_OFFSET = 24;

    /** Where the size of the sound stands in a file with the plain head. */
    static final int DATA_SIZE_OFFSET = 40;

    /** Where the sound begins in a file with the plain head. */
    static final int DATA_OFFSET = 44;

    // the tail that RFC 2361 and the extensible form share for registered codings
    private static final String TAG_TAIL = "000000001000800000aa00389b71";

    private final String outer;
    private final int tag;
    private final int bits;
    private final boolean extensible;

    Wav(String outer, int tag, int bits, boolean extensible) {
        this.outer = outer;
        this.tag = tag;
        this.bits = bits;
        this.extensible = extensible;
    }

    /** Half a step of the form, in full-scale units. */
    double halfStep() {
        return Math.pow(2, tag == 1 ? -bits : -25);
    }

    /** A whole file; integer forms round to the nearest step. */
    byte[] of(int rate, double[]... sound) {
        int frameBytes = sound.length * bits / 8;
        int dataBytes = sound[0].length * frameBytes;
        boolean longSizes = !outer.equals("RIFF");
        int formatBytes = extensible ? 40 : 16;
        int length = 12 + (longSizes ? 36 : 0) + 8 + formatBytes + 8 + dataBytes;
        ByteBuffer b = ByteBuffer.allocate(length).order(ByteOrder.LITTLE_ENDIAN);
        text(b, outer).putInt(longSizes ? -1 : length - 8);
        text(b, "WAVE");
        if (longSizes) {
            text(b, "ds64").putInt(28).putLong(length - 8).putLong(dataBytes);
            b.putLong(sound[0].length).putInt(0);
        }
        format(b, rate, sound.length, formatBytes);
        text(b, "data").putInt(longSizes ? -1 : dataBytes);
        for (int i = 0; i < sound[0].length; i++) {
            for (double[] channel : sound) {
                sample(b, channel[i]);
            }
        }
        return b.array();
    }

    private void format(ByteBuffer b, int rate, int channels, int formatBytes) {
        int frameBytes = channels * bits / 8;
        text(b, "fmt ").putInt(formatBytes);
        b.putShort((short) (extensible ? 0xFFFE : tag)).putShort((short) channels);
        b.putInt(rate).putInt(rate * frameBytes);
        b.putShort((short) frameBytes).putShort((short) bits);
        if (extensible) {
            b.putShort((short) 22).putShort((short) bits).putInt(3);
            b.putShort((short) tag).put(HexFormat.of().parseHex(TAG_TAIL));
        }
    }

    private void sample(ByteBuffer b, double x) {
        if (tag == 3) {
            if (bits == 32) {
                b.putFloat((float) x);
            } else {
                b.putDouble(x);
            }
            return;
        }
        double scale = Math.pow(2, bits - 1);
        long code = (long) Math.max(-scale, Math.min(scale - 1, Math.rint(x * scale)));
        for (int shift = 0; shift < bits; shift += 8) {
            b.put((byte) (code >> shift));
        }
    }

    private static ByteBuffer text(ByteBuffer b, String fourCharacters) {
        return b.put(fourCharacters.getBytes(StandardCharsets.US_ASCII));
    }
}
