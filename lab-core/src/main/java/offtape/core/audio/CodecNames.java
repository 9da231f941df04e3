package offtape.core.audio;

import java.util.Locale;
import java.util.Map;
import offtape.core.text.Sentences;

/** Words for the coding tags of compressed WAV files (registered tags, RFC 2361). */
final class CodecNames {

    private static final Sentences SAID = Sentences.near(CodecNames.class);

    private static final Map<Integer, String> WORDS =
            Map.ofEntries(
                    Map.entry(0x0002, "ADPCM"),
                    Map.entry(0x0006, "A-law"),
                    Map.entry(0x0007, "µ-law"),
                    Map.entry(0x0011, "IMA ADPCM"),
                    Map.entry(0x0031, "GSM 6.10"),
                    Map.entry(0x0040, "G.721 ADPCM"),
                    Map.entry(0x0050, "MPEG layer 2"),
                    Map.entry(0x0055, "MP3"),
                    Map.entry(0x0092, "AC-3"),
                    Map.entry(0x00FF, "AAC"),
                    Map.entry(0x0161, "Windows Media Audio"),
                    Map.entry(0x1610, "AAC"),
                    Map.entry(0x2000, "AC-3"),
                    Map.entry(0xF1AC, "FLAC"));

    private CodecNames() {}

    /** The name of a coding with its tag, or the tag alone if it is not known. */
    static String of(int tag) {
        String number = String.format(Locale.ROOT, "0x%04X", tag);
        String name = WORDS.get(tag);
        return name == null
                ? SAID.say("codec.tag", number)
                : SAID.say("codec.name-and-tag", name, number);
    }
}
