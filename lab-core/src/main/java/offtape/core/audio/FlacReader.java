package offtape.core.audio;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import offtape.core.audio.flac.ByteSupply;
import offtape.core.audio.flac.FlacDecoder;
import offtape.core.audio.flac.FlacFault;
import offtape.core.audio.flac.StreamInfo;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.Sentences;

/** Reads a FLAC file: decodes it once, so that its sound can then be read from any place. */
final class FlacReader {

    private static final Sentences SAID = Sentences.near(FlacReader.class);

    private static final int TAG_HEAD = 10;
    private static final int TAG_FOOT_FLAG = 0x10;
    private static final byte[] MARK = "fLaC".getBytes(StandardCharsets.US_ASCII);
    private static final byte[] TAG = "ID3".getBytes(StandardCharsets.US_ASCII);

    private FlacReader() {}

    /** Where the stream begins, after a tag if there is one before it; −1 if there is none. */
    static long start(FileBytes file) {
        long start = isAt(file, 0, TAG) ? tagEnd(file) : 0;
        return isAt(file, start, MARK) ? start : -1;
    }

    private static boolean isAt(FileBytes file, long position, byte[] mark) {
        return file.peek(position, mark.length).equals(ByteBuffer.wrap(mark));
    }

    /** Identifier, version, flags, then the size in four bytes of seven bits (ID3v2). */
    private static long tagEnd(FileBytes file) {
        ByteBuffer head = file.peek(0, TAG_HEAD);
        int size = 0;
        for (int i = 6; i < TAG_HEAD; i++) {
            size = size << 7 | head.get(i) & 0x7F;
        }
        boolean hasFoot = (head.get(5) & TAG_FOOT_FLAG) != 0;
        return TAG_HEAD + size + (hasFoot ? TAG_HEAD : 0);
    }

    /**
     * Decodes the file, which is closed then.
     *
     * @param start where the stream begins, in bytes
     * @throws UnusableInputException if it is damaged, or there is no room for the decoded sound
     */
    static AudioFile read(FileBytes file, long start) {
        FlacDecoder decoder = opened(file, start);
        StreamInfo info = decoder.info();
        FormatCheck check = new FormatCheck(file.path());
        int rate = check.sampleRateHz(info.sampleRateHz());
        check.bits(info.bits());
        DecodedCopy copy = DecodedCopy.of(file.path());
        try {
            FlacSound sound = new FlacSound(file.path(), decoder, copy);
            sound.decode();
            SoundFormat format = new SoundFormat(rate, info.channels(), sound.coding());
            file.close();
            return new AudioFile(
                    file.path(),
                    copy.bytes(),
                    format,
                    0,
                    decoder.frames(),
                    sound.notes(),
                    Optional.empty());
        } catch (RuntimeException e) {
            copy.close();
            throw e;
        }
    }

    private static FlacDecoder opened(FileBytes file, long start) {
        try {
            return FlacDecoder.open(supply(file, start));
        } catch (FlacFault e) {
            throw new UnusableInputException(
                    SAID.say("flac.unusable", file.path(), e.getMessage()), e);
        }
    }

    private static ByteSupply supply(FileBytes file, long start) {
        long[] position = {start};
        return into -> {
            int there = (int) Math.min(into.length, file.size() - position[0]);
            if (there <= 0) {
                return -1;
            }
            file.fill(ByteBuffer.wrap(into, 0, there), position[0]);
            position[0] += there;
            return there;
        };
    }
}
