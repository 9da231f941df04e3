package offtape.core.audio;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.HexFormat;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.Sentences;

/** Reads and checks the {@code fmt } chunk of a WAV file. */
final class FormatChunk {

    private static final Sentences SAID = Sentences.near(FormatChunk.class);

    static final int PCM = 1;
    static final int FLOAT = 3;
    static final int EXTENSIBLE = 0xFFFE;

    /** Length of the chunk's content with all extensions, in bytes. */
    static final int LONGEST = 40;

    /** What follows the two bytes of a tag in the identifier of a registered coding. */
    static final String TAG_TAIL = "000000001000800000aa00389b71";

    private static final int SHORTEST = 16;

    private final FormatCheck check;
    private final ByteBuffer body;

    private FormatChunk(FormatCheck check, ByteBuffer body) {
        this.check = check;
        this.body = body;
    }

    /**
     * Reads and checks the chunk.
     *
     * @throws UnusableInputException if it does not describe linear or float samples, or
     *     contradicts itself
     */
    static SoundFormat read(FileBytes file, Chunk chunk) {
        ByteBuffer body = file.peek(chunk.body(), (int) Math.min(chunk.size(), LONGEST));
        return new FormatChunk(new FormatCheck(file.path()), body).read();
    }

    private SoundFormat read() {
        check.require(body.remaining() >= SHORTEST, SAID.say("fmt-too-short"));
        int channels = check.channels(word(2));
        int rate = check.sampleRateHz(body.getInt(4) & 0xFFFF_FFFFL);
        SoundFormat format = new SoundFormat(rate, channels, coding(tag()));
        check.require(
                word(12) == format.frameBytes(),
                SAID.say("frame-bytes", word(12), format.frameBytes()));
        return format;
    }

    private int word(int index) {
        return body.getShort(index) & 0xFFFF;
    }

    private int tag() {
        int tag = word(0);
        if (tag != EXTENSIBLE) {
            return tag;
        }
        check.require(body.remaining() >= LONGEST, SAID.say("extended-too-short"));
        byte[] tail = new byte[14];
        body.duplicate().position(26).get(tail);
        check.require(HexFormat.of().formatHex(tail).equals(TAG_TAIL), SAID.say("unknown-coding"));
        return word(24);
    }

    private SampleCoding coding(int tag) {
        int bits = word(14);
        if (tag == FLOAT) {
            check.require(bits == 32 || bits == 64, SAID.say("float-bits", bits));
            return SampleCoding.floating(bits, ByteOrder.LITTLE_ENDIAN);
        }
        check.require(tag == PCM, SAID.say("compressed", CodecNames.of(tag)));
        int bytes = (check.bits(bits) + 7) / 8;
        // one byte is unsigned: 128 is zero
        SampleCoding.Kind kind = bytes == 1 ? SampleCoding.Kind.UNSIGNED : SampleCoding.Kind.SIGNED;
        return new SampleCoding(kind, ByteOrder.LITTLE_ENDIAN, bytes, validBits(bits));
    }

    private int validBits(int bits) {
        // some recorders leave the field 0 when all bits count
        if (word(0) != EXTENSIBLE || word(18) == 0) {
            return bits;
        }
        check.require(word(18) <= bits, SAID.say("valid-bits", word(18), bits));
        return word(18);
    }
}
