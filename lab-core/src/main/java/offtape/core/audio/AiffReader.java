package offtape.core.audio;

import java.nio.ByteBuffer;
import java.util.Optional;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.Sentences;

/**
 * Reads the header of an AIFF or AIFF-C file (Apple, "Audio Interchange File Format", 1989 and
 * 1991): linear PCM of 8 to 32 bits, either byte first, or IEEE float of 32 or 64 bits.
 */
final class AiffReader {

    private static final Sentences SAID = Sentences.near(AiffReader.class);

    /** Offset and block size at the beginning of the sound's chunk, in bytes. */
    private static final int SOUND_HEAD = 8;

    private AiffReader() {}

    /**
     * Reads the header.
     *
     * @throws UnusableInputException if the sound is not to be found or is coded in another way
     */
    static AudioFile read(FileBytes file) {
        AiffScan.Found found = AiffScan.scan(file);
        CommonChunk common = CommonChunk.read(file, found.common());
        return AudioFile.in(
                file, place(file, found.sound(), common), common.format(), Optional.empty());
    }

    private static SoundPlace place(FileBytes file, Chunk chunk, CommonChunk common) {
        ByteBuffer head = file.peek(chunk.body(), SOUND_HEAD).order(AiffScan.ORDER);
        long skipped = head.remaining() < SOUND_HEAD ? 0 : head.getInt(0) & 0xFFFF_FFFFL;
        long offset = SOUND_HEAD + skipped;
        long size =
                chunk.size() == 0 || chunk.size() == Chunk.NO_SIZE ? Long.MAX_VALUE : chunk.size();
        if (offset > size || skipped > 0 && chunk.body() + offset > file.size()) {
            throw new UnusableInputException(SAID.say("aiff.sound-beyond-end", file.path()));
        }
        return new SoundPlace(chunk, offset, bytes(size, offset, common), AiffScan.ORDER);
    }

    /** What the chunk can hold, or less if the format says that less of it is sound. */
    private static long bytes(long size, long offset, CommonChunk common) {
        long inChunk = size == Long.MAX_VALUE ? size : size - offset;
        long byFormat = common.frames() * common.format().frameBytes();
        return common.frames() == 0 ? inChunk : Math.min(inChunk, byFormat);
    }
}
