package offtape.core.audio;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.Optional;

/**
 * The header of a WAV file we write. A {@code JUNK} chunk keeps room for {@code ds64}: a file that
 * outgrows 32-bit sizes becomes RF64 by rewriting the header alone (EBU Tech 3306).
 *
 * <p>PCM for one or two channels has the plain 16-byte format, which every program reads; float has
 * the size of its (empty) extension and a {@code fact} chunk, as the format asks of everything but
 * PCM; more than two channels have the extensible form, with no loudspeakers assigned. What the
 * file says of itself comes before the format, as Broadcast WAV files have it.
 *
 * @param format of the sound
 * @param note what the file says of itself, if anything
 * @param frames how many there are
 */
record WavHeader(WavFormat format, Optional<BroadcastNote> note, long frames) {

    private static final long LARGEST_SHORT = 0xFFFF_FFFEL;

    /** The header's length in bytes, the same for any number of frames. */
    private int length() {
        return ChunkWalk.FILE_HEAD
                + Chunk.HEAD
                + LongSizes.SHORTEST
                + described().map(bytes -> Chunk.HEAD + bytes.length).orElse(0)
                + Chunk.HEAD
                + formatLength(format)
                + (format.encoding().isFloating() ? Chunk.HEAD + 4 : 0)
                + Chunk.HEAD;
    }

    private Optional<byte[]> described() {
        return note.map(n -> BroadcastChunk.bytes(n, format));
    }

    private static int formatLength(WavFormat format) {
        if (format.channels() > 2) {
            return FormatChunk.LONGEST;
        }
        return format.encoding().isFloating() ? 18 : 16;
    }

    private long dataBytes() {
        return frames * format.frameBytes();
    }

    /** What the outer chunk holds: everything after its identifier and size, with the pad byte. */
    private long outerBytes() {
        return length() - Chunk.HEAD + dataBytes() + (dataBytes() & 1);
    }

    private boolean isLong() {
        return outerBytes() > LARGEST_SHORT;
    }

    /** The bytes, ready to be written. */
    ByteBuffer bytes() {
        ByteBuffer out = ByteBuffer.allocate(length()).order(ByteOrder.LITTLE_ENDIAN);
        put(out, isLong() ? "RF64" : "RIFF").putInt(shortSize(outerBytes()));
        put(out, "WAVE");
        putLongSizes(out);
        described().ifPresent(bytes -> put(out, BroadcastChunk.ID).putInt(bytes.length).put(bytes));
        putFormat(out);
        if (format.encoding().isFloating()) {
            put(out, "fact").putInt(4).putInt(shortSize(frames));
        }
        put(out, "data").putInt(shortSize(dataBytes()));
        return out.flip();
    }

    private int shortSize(long size) {
        return isLong() ? -1 : (int) size;
    }

    private void putLongSizes(ByteBuffer out) {
        put(out, isLong() ? "ds64" : "JUNK").putInt(LongSizes.SHORTEST);
        out.putLong(isLong() ? outerBytes() : 0);
        out.putLong(isLong() ? dataBytes() : 0);
        out.putLong(isLong() ? frames : 0);
        out.putInt(0);
    }

    private void putFormat(ByteBuffer out) {
        WavEncoding encoding = format.encoding();
        int tag = encoding.isFloating() ? FormatChunk.FLOAT : FormatChunk.PCM;
        boolean extensible = format.channels() > 2;
        put(out, "fmt ").putInt(formatLength(format));
        out.putShort((short) (extensible ? FormatChunk.EXTENSIBLE : tag));
        out.putShort((short) format.channels());
        out.putInt(format.sampleRateHz());
        out.putInt(format.sampleRateHz() * format.frameBytes());
        out.putShort((short) format.frameBytes());
        out.putShort((short) encoding.bits());
        if (extensible) {
            out.putShort((short) 22).putShort((short) encoding.bits()).putInt(0);
            out.putShort((short) tag).put(HexFormat.of().parseHex(FormatChunk.TAG_TAIL));
        } else if (encoding.isFloating()) {
            out.putShort((short) 0);
        }
    }

    private static ByteBuffer put(ByteBuffer out, String id) {
        return out.put(id.getBytes(StandardCharsets.US_ASCII));
    }
}
