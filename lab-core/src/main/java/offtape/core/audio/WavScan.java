package offtape.core.audio;

import java.nio.ByteOrder;
import java.util.Optional;
import java.util.Set;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.Sentences;

/** Finds the chunks that matter in a RIFF, RF64 or BW64 file and skips all others. */
final class WavScan {

    private static final Sentences SAID = Sentences.near(WavScan.class);

    private static final ByteOrder ORDER = ByteOrder.LITTLE_ENDIAN;

    private final FileBytes file;
    private LongSizes sizes = LongSizes.none();
    private Chunk format;
    private Chunk data;
    private Optional<BroadcastNote> note = Optional.empty();

    private WavScan(FileBytes file) {
        this.file = file;
    }

    /** What was found: the chunk of the format, the sound, and what the file says of itself. */
    record Found(Chunk format, SoundPlace sound, Optional<BroadcastNote> note) {}

    /**
     * Walks the chunks up to {@code data}.
     *
     * @throws UnusableInputException if one of the two is missing or they come in the wrong order
     */
    static Found scan(FileBytes file) {
        WavScan scan = new WavScan(file);
        scan.walk();
        SoundPlace sound = new SoundPlace(scan.data, 0, scan.sizes.of(scan.data), ORDER);
        return new Found(scan.format, sound, scan.note);
    }

    private void walk() {
        ChunkWalk walk = new ChunkWalk(file, ORDER);
        while (data == null && walk.hasNext()) {
            Chunk chunk = walk.next();
            note(chunk);
            walk.leave(chunk, sizes.of(chunk));
        }
        if (data == null) {
            throw unusable(
                    format == null ? SAID.say("wav.nothing-found") : SAID.say("wav.no-sound"));
        }
    }

    private void note(Chunk chunk) {
        switch (chunk.id()) {
            case "ds64" -> sizes = LongSizes.read(file, chunk);
            case "fmt " -> format = format == null ? chunk : format;
            case BroadcastChunk.ID -> note = note.or(() -> BroadcastChunk.read(file, chunk));
            case "data" -> {
                if (format == null) {
                    throw unusable(SAID.say("wav.no-format"));
                }
                data = chunk;
            }
            default -> {
                // other descriptions, markers and fillers do not change the sound
            }
        }
    }

    private UnusableInputException unusable(String what) {
        return new UnusableInputException(SAID.say("wav.unusable", file.path(), what));
    }

    /** The forms of file whose chunks are laid out this way. */
    static boolean isWave(String outer, String form) {
        return Set.of("RIFF", "RF64", "BW64").contains(outer) && form.equals("WAVE");
    }
}
