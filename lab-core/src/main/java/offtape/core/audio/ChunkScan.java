package offtape.core.audio;

import java.util.Set;
import offtape.core.fault.UnusableInputException;

/** Finds the chunks that matter in a RIFF, RF64 or BW64 file and skips all others. */
final class ChunkScan {

    /** Length of the outer identifier, size and form, in bytes. */
    static final int FILE_HEAD = 12;

    private static final int MOST_CHUNKS = 10_000;

    private final FileBytes file;
    private LongSizes sizes = LongSizes.none();
    private Chunk format;
    private Chunk data;

    private ChunkScan(FileBytes file) {
        this.file = file;
    }

    /** The chunks as found: the format and the sound with its true stated size. */
    record Found(Chunk format, Chunk data, long statedDataBytes) {}

    /**
     * Walks the chunks up to {@code data}.
     *
     * @throws UnusableInputException if one of the two is missing or they come in the wrong order
     */
    static Found scan(FileBytes file) {
        ChunkScan scan = new ChunkScan(file);
        scan.walk();
        return new Found(scan.format, scan.data, scan.sizes.of(scan.data));
    }

    private void walk() {
        long position = FILE_HEAD;
        for (int n = 0; n < MOST_CHUNKS && position <= file.size() - Chunk.HEAD; n++) {
            Chunk chunk = Chunk.at(file, position);
            note(chunk);
            if (data != null) {
                return;
            }
            position = chunk.end(Math.min(sizes.of(chunk), file.size()));
        }
        throw unusable(
                format == null
                        ? "neither the format ('fmt ') nor the sound ('data') was found in it"
                        : "the sound ('data') was not found in it");
    }

    private void note(Chunk chunk) {
        switch (chunk.id()) {
            case "ds64" -> sizes = LongSizes.read(file, chunk);
            case "fmt " -> format = format == null ? chunk : format;
            case "data" -> {
                if (format == null) {
                    throw unusable(
                            "the sound ('data') comes without the format ('fmt ') before it");
                }
                data = chunk;
            }
            default -> {
                // descriptions, markers and fillers do not change the sound
            }
        }
    }

    private UnusableInputException unusable(String what) {
        return new UnusableInputException(
                file.path()
                        + " is a damaged or cut WAV file: "
                        + what
                        + ". Export or copy the recording again.");
    }

    /** The forms of file whose chunks are laid out this way. */
    static boolean isWave(String outer, String form) {
        return Set.of("RIFF", "RF64", "BW64").contains(outer) && form.equals("WAVE");
    }

    /**
     * Whether from a place on to the end there is nothing but whole, named chunks; then what was
     * before them had the size it stated.
     */
    static boolean isChunksToTheEnd(FileBytes file, long from) {
        long position = from;
        for (int n = 0; n < MOST_CHUNKS && position <= file.size() - Chunk.HEAD; n++) {
            Chunk chunk = Chunk.at(file, position);
            if (!chunk.isNamed() || chunk.body() + chunk.size() > file.size()) {
                return false;
            }
            position = chunk.end(chunk.size());
        }
        return true;
    }
}
