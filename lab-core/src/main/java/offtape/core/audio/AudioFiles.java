package offtape.core.audio;

import java.nio.ByteBuffer;
import java.nio.file.Path;
import offtape.core.fault.UnusableInputException;

/** Opens audio files. What a file is, its content says and not its name. */
public final class AudioFiles {

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
                    file.path() + " is empty. Export or copy the recording again.");
        }
        ByteBuffer head = file.peek(0, ForeignKind.LOOKED_AT);
        if (head.remaining() < ChunkWalk.FILE_HEAD) {
            throw new UnusableInputException(
                    file.path()
                            + " is only "
                            + file.size()
                            + " bytes long and no sound file. Export or copy the recording again.");
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
                file.path()
                        + " is "
                        + ForeignKind.of(head).orElse("no WAV, AIFF or FLAC file")
                        + ". Export the recording as WAV and name that file.");
    }
}
