package offtape.cli.command;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Supplier;

/** Small sound files of a tenth of a second with one fault each, by name. */
final class BadSounds {

    private static final int CHANNELS = 22;
    private static final int BLOCK_ALIGN = 32;
    private static final int BITS = 34;
    private static final int TAG = 20;

    // 80-bit floats: sign and exponent, then the significand with its leading one
    private static final String RATE_48000 = "400ebb80000000000000";
    private static final String RATE_4G = "401effffffff00000000";
    private static final String RATE_NAN = "7fffc000000000000000";

    private final byte[] wav = Wav.PCM_16.of(48_000, Lab.tone(1000, 0.1, 0.1), new double[4800]);
    private final byte[] extensible = Wav.EXTENSIBLE_24.of(48_000, Lab.tone(1000, 0.1, 0.1));
    private final byte[] flac = Flac.of(48_000, Lab.tone(1000, 0.1, 0.1));
    private final Map<String, Supplier<byte[]>> all = new TreeMap<>();

    BadSounds() {
        wavHeaders();
        wavChunks();
        aiff();
        flac();
        foreign();
    }

    /** Names and bytes. */
    Map<String, Supplier<byte[]>> all() {
        return all;
    }

    private void wavHeaders() {
        all.put("wav-channels-0", () -> word(wav, CHANNELS, 0));
        all.put("wav-channels-65535", () -> word(wav, CHANNELS, 65_535));
        all.put("wav-rate-0", () -> Lab.patched(wav, Wav.RATE_OFFSET, 0));
        all.put("wav-rate-4G", () -> Lab.patched(wav, Wav.RATE_OFFSET, -1));
        all.put("wav-align-0", () -> word(wav, BLOCK_ALIGN, 0));
        all.put("wav-align-65535", () -> word(wav, BLOCK_ALIGN, 65_535));
        all.put("wav-bits-0", () -> word(wav, BITS, 0));
        all.put("wav-bits-65535", () -> word(wav, BITS, 65_535));
        all.put("wav-float-16", () -> word(wav, TAG, 3));
        all.put("wav-adpcm", () -> word(wav, TAG, 0x11));
        all.put("wav-mp3", () -> word(wav, TAG, 0x55));
        all.put("wav-extended-short", () -> word(wav, TAG, 0xFFFE));
        all.put("wav-extended-unknown", () -> word(extensible, 50, 0x1234));
        all.put("wav-valid-bits", () -> word(extensible, 38, 32));
    }

    private void wavChunks() {
        all.put("wav-cut-12", () -> Arrays.copyOf(wav, 12));
        all.put("wav-cut-in-chunk-head", () -> Arrays.copyOf(wav, 17));
        all.put("wav-cut-20", () -> Arrays.copyOf(wav, 20));
        all.put("wav-cut-36", () -> Arrays.copyOf(wav, 36));
        all.put("wav-cut-44", () -> Arrays.copyOf(wav, 44));
        all.put("wav-format-short", () -> Lab.patched(wav, 16, 14));
        all.put("wav-format-4G", () -> Lab.patched(wav, 16, -1));
        all.put("wav-no-format", () -> text(wav, 12, "junk"));
        all.put("wav-no-sound", () -> text(wav, 36, "junk"));
        all.put("wav-sound-first", () -> text(text(wav, 12, "data"), 36, "fmt "));
        all.put("rf64-without-sizes-cut", () -> text(Arrays.copyOf(wav, 36), 0, "RF64"));
    }

    private void aiff() {
        byte[] good = aiff(2, 48, 16, RATE_48000);
        all.put("aiff-channels-0", () -> aiff(0, 48, 16, RATE_48000));
        all.put("aiff-channels-65535", () -> aiff(65_535, 48, 16, RATE_48000));
        all.put("aiff-rate-0", () -> aiff(2, 48, 16, "00000000000000000000"));
        all.put("aiff-rate-4G", () -> aiff(2, 48, 16, RATE_4G));
        all.put("aiff-rate-nan", () -> aiff(2, 48, 16, RATE_NAN));
        all.put("aiff-bits-0", () -> aiff(2, 48, 0, RATE_48000));
        all.put("aiff-cut-12", () -> Arrays.copyOf(good, 12));
        all.put("aiff-cut-38", () -> Arrays.copyOf(good, 38));
        all.put("aiff-no-format", () -> text(good, 12, "junk"));
        all.put(
                "aiff-format-short",
                () -> Arrays.copyOf(text(text(good, 38, "junk"), 12, "SSND"), 54));
        all.put("aiff-sound-beyond", () -> bytes(good, 46, 0x7FFF_FFFF, 4, ByteOrder.BIG_ENDIAN));
    }

    private void flac() {
        all.put("flac-mark", () -> Arrays.copyOf(flac, 12));
        all.put("flac-cut-in-header", () -> Arrays.copyOf(flac, 30));
        all.put("flac-cut-in-block", () -> Arrays.copyOf(flac, flac.length / 2));
        all.put("flac-damaged", () -> bytes(flac, 5000, 0x5A5A, 2, ByteOrder.BIG_ENDIAN));
        all.put("flac-rate-0", () -> bytes(flac, 18, 0, 2, ByteOrder.BIG_ENDIAN));
        all.put("flac-shape", () -> bytes(flac, 20, 0x0370, 2, ByteOrder.BIG_ENDIAN));
    }

    private void foreign() {
        all.put("ogg", () -> text(new byte[40], 0, "OggS"));
        all.put("mpeg-4", () -> text(new byte[40], 4, "ftypM4A "));
        all.put("tagged-mp3", () -> text(new byte[40], 0, "ID3\4"));
        all.put("reversed-bytes", () -> text(wav, 0, "RIFX"));
        all.put("page", () -> "<!DOCTYPE html><html></html>".getBytes(StandardCharsets.UTF_8));
    }

    private static byte[] aiff(int channels, int frames, int bits, String rate) {
        ByteBuffer b = ByteBuffer.allocate(12 + 26 + 16 + 4 * frames);
        b.put(ascii("FORM")).putInt(b.capacity() - 8).put(ascii("AIFF"));
        b.put(ascii("COMM")).putInt(18).putShort((short) channels).putInt(frames);
        b.putShort((short) bits).put(java.util.HexFormat.of().parseHex(rate));
        b.put(ascii("SSND")).putInt(8 + 4 * frames).putInt(0).putInt(0);
        return b.array();
    }

    private static byte[] word(byte[] bytes, int offset, int value) {
        return bytes(bytes, offset, value, 2, ByteOrder.LITTLE_ENDIAN);
    }

    private static byte[] bytes(byte[] bytes, int offset, int value, int count, ByteOrder order) {
        ByteBuffer copy = ByteBuffer.wrap(bytes.clone()).order(order);
        if (count == Short.BYTES) {
            copy.putShort(offset, (short) value);
        } else {
            copy.putInt(offset, value);
        }
        return copy.array();
    }

    private static byte[] text(byte[] bytes, int offset, String text) {
        byte[] copy = bytes.clone();
        System.arraycopy(ascii(text), 0, copy, offset, text.length());
        return copy;
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.ISO_8859_1);
    }
}
