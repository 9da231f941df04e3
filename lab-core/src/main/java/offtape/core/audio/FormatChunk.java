package offtape.core.audio;

import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.HexFormat;
import offtape.core.fault.UnusableInputException;

/**
 * What the {@code fmt } chunk says, checked.
 *
 * @param sampleRateHz 1 to 768000
 * @param channels 1 to 64
 * @param coding how a sample lies in the file
 */
record FormatChunk(int sampleRateHz, int channels, SampleCoding coding) {

    static final int PCM = 1;
    static final int FLOAT = 3;
    static final int EXTENSIBLE = 0xFFFE;

    /** Length of the chunk's content with all extensions, in bytes. */
    static final int LONGEST = 40;

    /** What follows the two bytes of a tag in the identifier of a registered coding. */
    static final String TAG_TAIL = "000000001000800000aa00389b71";

    private static final int SHORTEST = 16;

    /** Bytes of one frame. */
    int frameBytes() {
        return channels * coding.bytes();
    }

    /**
     * Reads and checks the chunk.
     *
     * @throws UnusableInputException if it does not describe linear or float samples, or
     *     contradicts itself
     */
    static FormatChunk read(FileBytes file, Chunk chunk) {
        ByteBuffer body = file.peek(chunk.body(), (int) Math.min(chunk.size(), LONGEST));
        Reader reader = new Reader(file.path(), body);
        return reader.read();
    }

    private record Reader(Path path, ByteBuffer body) {

        FormatChunk read() {
            require(body.remaining() >= SHORTEST, "its format ('fmt ') is too short");
            int channels = word(2);
            require(channels >= 1, "its header states no channels");
            require(
                    channels <= WavFormat.MOST_CHANNELS,
                    "its header states " + channels + " channels; up to 64 are read");
            long rate = body.getInt(4) & 0xFFFF_FFFFL;
            require(rate >= 1, "its header states a sample rate of 0 Hz");
            require(
                    rate <= WavFormat.HIGHEST_RATE_HZ,
                    "its header states a sample rate of " + rate + " Hz; up to 768000 Hz are read");
            SampleCoding coding = coding(tag());
            FormatChunk format = new FormatChunk((int) rate, channels, coding);
            require(
                    word(12) == format.frameBytes(),
                    "its header states "
                            + word(12)
                            + " bytes a frame, but its samples need "
                            + format.frameBytes());
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
            require(body.remaining() >= LONGEST, "its extended format ('fmt ') is too short");
            byte[] tail = new byte[14];
            body.duplicate().position(26).get(tail);
            require(
                    HexFormat.of().formatHex(tail).equals(TAG_TAIL),
                    "its samples are coded in a way that is not known here");
            return word(24);
        }

        private SampleCoding coding(int tag) {
            int bits = word(14);
            if (tag == FLOAT) {
                require(bits == 32 || bits == 64, "its header states float of " + bits + " bits");
                return new SampleCoding(true, bits / 8, bits);
            }
            require(tag == PCM, "its sound is compressed: " + CodecNames.of(tag));
            require(
                    bits >= 8 && bits <= 32,
                    "its header states samples of " + bits + " bits; 8 to 32 are read");
            return new SampleCoding(false, (bits + 7) / 8, validBits(bits));
        }

        private int validBits(int bits) {
            // some recorders leave the field 0 when all bits count
            if (word(0) != EXTENSIBLE || word(18) == 0) {
                return bits;
            }
            require(
                    word(18) <= bits,
                    "its header states " + word(18) + " valid bits in samples of " + bits);
            return word(18);
        }

        private void require(boolean held, String otherwise) {
            if (!held) {
                throw new UnusableInputException(
                        path
                                + " cannot be used: "
                                + otherwise
                                + ". Export the recording as linear WAV (16 or 24 bit, or float).");
            }
        }
    }
}
