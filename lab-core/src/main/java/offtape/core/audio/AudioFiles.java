package offtape.core.audio;

import java.nio.ByteBuffer;
import java.nio.file.Path;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.Sentences;

/** Opens audio files. What a file is, its content says and not its name. */
public final class AudioFiles {

    private static final Sentences SAID = Sentences.near(AudioFiles.class);

    private AudioFiles() {}

    /**
     * Opens a WAV, AIFF or FLAC file for reading. A FLAC file is decoded once, into a temporary
     * file that is gone when the sound is closed or the process ends.
     *
     * @param path the file
     * @return the sound, to be closed by the caller
     * @throws UnusableInputException if it cannot be read, is something else or is damaged beyond
     *     use; the message says which and what to do
     */
    public static AudioFile open(Path path) {
        FileBytes file = FileBytes.open(path);
        try {
            return read(file);
        } catch (RuntimeException e) {
            file.close();
            throw e;
        }
    }

    private static AudioFile read(FileBytes file) {
        if (file.size() == 0) {
            throw new UnusableInputException(
                    SAID.say("empty", file.path()) + " " + SAID.say("copy-again"));
        }
        ByteBuffer head = file.peek(0, ForeignKind.LOOKED_AT);
        if (head.remaining() < ChunkWalk.FILE_HEAD) {
            throw new UnusableInputException(SAID.say("too-short", file.path(), file.size()));
        }
        ByteBuffer start = head.duplicate();
        String outer = Chunk.fourCharacters(start);
        start.getInt();
        String form = Chunk.fourCharacters(start);
        if (WavScan.isWave(outer, form)) {
            return WavReader.read(file);
        }
        if (AiffScan.isAiff(outer, form)) {
            return AiffReader.read(file);
        }
        long stream = FlacReader.start(file);
        if (stream >= 0) {
            return FlacReader.read(file, stream);
        }
        throw new UnusableInputException(
                SAID.say(
                        "foreign",
                        file.path(),
                        ForeignKind.of(head).orElse(SAID.say("kind.unknown"))));
    }
}
