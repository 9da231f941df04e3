package offtape.core.audio;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;

/** Names what a file is that is none of the kinds that are read, from its first bytes. */
final class ForeignKind {

    /** How many bytes from the beginning are looked at. */
    static final int LOOKED_AT = 256;

    /** Bytes as two hexadecimal digits each, any byte as two dots, at the beginning of the file. */
    private record Mark(String pattern, String words) {
        boolean fits(String hex) {
            return hex.matches("(?s)" + pattern + ".*");
        }
    }

    private static final List<Mark> MARKS =
            List.of(
                    new Mark(hex("OggS"), "an Ogg file"),
                    new Mark("........" + hex("ftyp"), "an MPEG-4 file"),
                    new Mark(hex("caff"), "a Core Audio file"),
                    new Mark(hex("RIFX"), "a WAV file with its bytes in reverse order (RIFX)"),
                    new Mark(hex("riff"), "a Wave64 file"),
                    new Mark(hex("wvpk"), "a WavPack file"),
                    new Mark(hex(".snd"), "an AU file"),
                    new Mark(hex("DSD "), "a one-bit (DSD) file"),
                    new Mark(hex("FRM8"), "a one-bit (DSD) file"),
                    new Mark(hex("ID3"), "an MP3 file"),
                    new Mark(hex("%PDF"), "a PDF document"),
                    new Mark("504b0304", "a ZIP archive"),
                    new Mark("1f8b", "a gzip archive"),
                    new Mark("(fffe|feff)", "a text file"),
                    // frame sync of 11 or 12 bits, then version and layer (ISO/IEC 11172-3,
                    // 13818-7)
                    new Mark("ff[ef][2-7a-f]", "an MP3 file"),
                    new Mark("fff[0189]", "an AAC file"));

    private ForeignKind() {}

    private static String hex(String ascii) {
        return HexFormat.of().formatHex(ascii.getBytes(StandardCharsets.US_ASCII));
    }

    /** "an Ogg file" and the like, or nothing if it is not known. */
    static Optional<String> of(ByteBuffer head) {
        byte[] bytes = new byte[head.remaining()];
        head.duplicate().get(bytes);
        String hex = HexFormat.of().formatHex(bytes);
        return MARKS.stream()
                .filter(m -> m.fits(hex))
                .map(Mark::words)
                .findFirst()
                .or(() -> text(bytes));
    }

    private static Optional<String> text(byte[] bytes) {
        for (byte b : bytes) {
            if (b >= 0 && b < ' ' && b != '\n' && b != '\r' && b != '\t') {
                return Optional.empty();
            }
        }
        String start = new String(bytes, StandardCharsets.ISO_8859_1).strip();
        if (start.startsWith("<")) {
            return Optional.of("a web page or XML document");
        }
        return Optional.of(start.startsWith("{") ? "a JSON document" : "a text file");
    }
}
