package offtape.core.audio;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;

/** Puts a file together byte by byte; numbers have their least significant byte first, or last. */
final class Bytes {

    private final ByteArrayOutputStream out = new ByteArrayOutputStream();

    /** Characters, one byte each. */
    Bytes text(String ascii) {
        out.writeBytes(ascii.getBytes(StandardCharsets.ISO_8859_1));
        return this;
    }

    /** Bytes as hexadecimal digits; blanks are for the reader. */
    Bytes hex(String digits) {
        out.writeBytes(HexFormat.of().parseHex(digits.replace(" ", "")));
        return this;
    }

    Bytes u16(int value) {
        return little(value, 2);
    }

    Bytes u32(long value) {
        return little(value, 4);
    }

    Bytes u64(long value) {
        return little(value, 8);
    }

    /** Two bytes, the most significant one first. */
    Bytes b16(int value) {
        return u16(Short.toUnsignedInt(Short.reverseBytes((short) value)));
    }

    /** Four bytes, the most significant one first. */
    Bytes b32(long value) {
        return u32(Integer.toUnsignedLong(Integer.reverseBytes((int) value)));
    }

    Bytes zeros(int count) {
        out.writeBytes(new byte[count]);
        return this;
    }

    private Bytes little(long value, int count) {
        for (int i = 0; i < count; i++) {
            out.write((int) (value >>> 8 * i));
        }
        return this;
    }

    /** The 16-byte format chunk of a RIFF WAVE file with its head. */
    Bytes fmt(int tag, int channels, long rateHz, int blockAlign, int bits) {
        text("fmt ").u32(16);
        return fields(tag, channels, rateHz, blockAlign, bits);
    }

    /** The six fields every format chunk begins with. */
    Bytes fields(int tag, int channels, long rateHz, int blockAlign, int bits) {
        u16(tag).u16(channels).u32(rateHz).u32(rateHz * blockAlign);
        return u16(blockAlign).u16(bits);
    }

    /** A chunk of sound. */
    Bytes data(String hexDigits) {
        String digits = hexDigits.replace(" ", "");
        return text("data").u32(digits.length() / 2).hex(digits);
    }

    /** Everything so far inside an outer RIFF chunk. */
    Bytes inRiff() {
        return new Bytes().text("RIFF").u32(out.size() + 4).text("WAVE").raw(array());
    }

    Bytes raw(byte[] bytes) {
        out.writeBytes(bytes);
        return this;
    }

    byte[] array() {
        return out.toByteArray();
    }

    Path to(Path file) throws IOException {
        return Files.write(file, array());
    }
}
