package offtape.core.audio;

import java.nio.ByteBuffer;
import java.nio.file.Path;
import offtape.core.fault.UnusableInputException;

/** Opens audio files. What a file is, its content says and not its name. */
public final class AudioFiles {

    private AudioFiles() {}

    /**
     * Opens a WAV file for reading.
     *
     * @param path the file
     * @return the sound, to be closed by the caller
     * @throws UnusableInputException if it cannot be read, is something else or is damaged beyond
     *     use; the message says which and what to do
     */
    public static WavFile open(Path path) {
        FileBytes file = FileBytes.open(path);
        try {
            requireWave(file);
            return WavFile.over(file);
        } catch (UnusableInputException e) {
            file.close();
            throw e;
        }
    }

    private static void requireWave(FileBytes file) {
        if (file.size() == 0) {
            throw new UnusableInputException(
                    file.path() + " is empty. Export or copy the recording again.");
        }
        ByteBuffer head = file.peek(0, ForeignKind.LOOKED_AT);
        if (head.remaining() < ChunkScan.FILE_HEAD) {
            throw new UnusableInputException(
                    file.path()
                            + " is only "
                            + file.size()
                            + " bytes long and no WAV file. Export or copy the recording again.");
        }
        ByteBuffer start = head.duplicate();
        String outer = Chunk.fourCharacters(start);
        start.getInt();
        if (!ChunkScan.isWave(outer, Chunk.fourCharacters(start))) {
            throw new UnusableInputException(
                    file.path()
                            + " is "
                            + ForeignKind.of(head).orElse("no WAV file")
                            + ". Export the recording as WAV and name that file.");
        }
    }
}
