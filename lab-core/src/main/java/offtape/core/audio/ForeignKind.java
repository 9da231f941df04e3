package offtape.core.audio;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import offtape.core.text.Sentences;

/** Names what a file is that is none of the kinds that are read, from its first bytes. */
final class ForeignKind {

    private static final Sentences SAID = Sentences.near(ForeignKind.class);

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
                    new Mark(hex("OggS"), SAID.say("kind.ogg")),
                    new Mark("........" + hex("ftyp"), SAID.say("kind.mpeg4")),
                    new Mark(hex("caff"), SAID.say("kind.core-audio")),
                    new Mark(hex("RIFX"), SAID.say("kind.rifx")),
                    new Mark(hex("riff"), SAID.say("kind.wave64")),
                    new Mark(hex("wvpk"), SAID.say("kind.wavpack")),
                    new Mark(hex(".snd"), SAID.say("kind.au")),
                    new Mark(hex("DSD "), SAID.say("kind.one-bit")),
                    new Mark(hex("FRM8"), SAID.say("kind.one-bit")),
                    new Mark(hex("ID3"), SAID.say("kind.mp3")),
                    new Mark(hex("%PDF"), SAID.say("kind.pdf")),
                    new Mark("504b0304", SAID.say("kind.zip")),
                    new Mark("1f8b", SAID.say("kind.gzip")),
                    new Mark("(fffe|feff)", SAID.say("kind.text")),
                    // frame sync of 11 or 12 bits, then version and layer (ISO/IEC 11172-3,
                    // 13818-7)
                    new Mark("ff[ef][2-7a-f]", SAID.say("kind.mp3")),
                    new Mark("fff[0189]", SAID.say("kind.aac")));

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
            return Optional.of(SAID.say("kind.xml"));
        }
        return Optional.of(start.startsWith("{") ? SAID.say("kind.json") : SAID.say("kind.text"));
    }
}
