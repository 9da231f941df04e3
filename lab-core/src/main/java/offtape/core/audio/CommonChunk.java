package offtape.core.audio;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Map;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.Sentences;

/**
 * The {@code COMM} chunk of an AIFF or AIFF-C file, checked.
 *
 * @param format how the sound lies in the file
 * @param frames stated length; 0 also if the header was left unfinished
 */
record CommonChunk(SoundFormat format, long frames) {

    private static final Sentences SAID = Sentences.near(CommonChunk.class);

    private static final int SHORTEST = 18;
    private static final int WITH_CODING = 22;

    private static final Map<String, String> COMPRESSED =
            Map.of(
                    "ima4", "IMA ADPCM",
                    "ulaw", "µ-law",
                    "ULAW", "µ-law",
                    "alaw", "A-law",
                    "ALAW", "A-law",
                    "MAC3", "MACE 3:1",
                    "MAC6", "MACE 6:1",
                    "GSM ", "GSM 6.10",
                    ".mp3", "MP3",
                    "QDM2", "QDesign");

    /**
     * Reads and checks the chunk. Layout: channels (2 bytes), frames (4), bits a sample (2), rate
     * (10, extended float); in AIFF-C then the coding (4).
     *
     * @throws UnusableInputException if it does not describe linear or float samples
     */
    static CommonChunk read(FileBytes file, Chunk chunk) {
        int there = (int) Math.min(chunk.size(), WITH_CODING);
        ByteBuffer body = file.peek(chunk.body(), there).order(AiffScan.ORDER);
        FormatCheck check = new FormatCheck(file.path());
        check.require(body.remaining() >= SHORTEST, SAID.say("comm-too-short"));
        int channels = check.channels(body.getShort(0) & 0xFFFF);
        double rate = ExtendedFloat.at(body, 8);
        check.require(rate == Math.rint(rate), SAID.say("rate.broken", rate));
        int rateHz = check.sampleRateHz((long) rate);
        SampleCoding coding = coding(check, name(body), body.getShort(6) & 0xFFFF);
        SoundFormat format = new SoundFormat(rateHz, channels, coding);
        return new CommonChunk(format, body.getInt(2) & 0xFFFF_FFFFL);
    }

    private static String name(ByteBuffer body) {
        return body.remaining() < WITH_CODING
                ? "NONE"
                : Chunk.fourCharacters(body.duplicate().position(SHORTEST));
    }

    private static SampleCoding coding(FormatCheck check, String name, int bits) {
        return switch (name) {
            case "NONE", "twos" -> SampleCoding.signed(check.bits(bits), ByteOrder.BIG_ENDIAN);
            case "sowt" -> SampleCoding.signed(check.bits(bits), ByteOrder.LITTLE_ENDIAN);
            case "in24" -> SampleCoding.signed(24, ByteOrder.BIG_ENDIAN);
            case "in32" -> SampleCoding.signed(32, ByteOrder.BIG_ENDIAN);
            case "fl32", "FL32" -> SampleCoding.floating(32, ByteOrder.BIG_ENDIAN);
            case "fl64", "FL64" -> SampleCoding.floating(64, ByteOrder.BIG_ENDIAN);
            case "raw " -> new SampleCoding(SampleCoding.Kind.UNSIGNED, ByteOrder.BIG_ENDIAN, 1, 8);
            default -> throw check.refusal(SAID.say("compressed", compressed(name)));
        };
    }

    private static String compressed(String name) {
        String printable = name.replaceAll("[^ -~]", "?");
        String words = COMPRESSED.get(name);
        return words == null ? "'" + printable + "'" : words + " ('" + printable + "')";
    }
}
