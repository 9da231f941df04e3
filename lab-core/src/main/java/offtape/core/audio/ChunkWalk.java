package offtape.core.audio;

import java.nio.ByteOrder;

/** Goes from chunk to chunk through a RIFF or AIFF file; it has an end whatever the file holds. */
final class ChunkWalk {

    /** Length of the outer identifier, size and form, in bytes. */
    static final int FILE_HEAD = 12;

    private static final int MOST_CHUNKS = 10_000;

    private final FileBytes file;
    private final ByteOrder order;
    private long position;
    private int seen;

    /** Begins behind the file's outer head. */
    ChunkWalk(FileBytes file, ByteOrder order) {
        this(file, order, FILE_HEAD);
    }

    private ChunkWalk(FileBytes file, ByteOrder order, long from) {
        this.file = file;
        this.order = order;
        this.position = from;
    }

    /** Whether there is room for another chunk. */
    boolean hasNext() {
        return seen < MOST_CHUNKS && position <= file.size() - Chunk.HEAD;
    }

    /** The chunk at this place; {@link #leave} goes on. */
    Chunk next() {
        seen++;
        return Chunk.at(file, position, order);
    }

    /** Goes to the end of a chunk of a given size. */
    void leave(Chunk chunk, long size) {
        position = chunk.end(Math.min(size, file.size()));
    }

    /**
     * Whether from a place on to the end there is nothing but whole, named chunks; then what was
     * before them had the size it stated.
     */
    static boolean isChunksToTheEnd(FileBytes file, ByteOrder order, long from) {
        ChunkWalk walk = new ChunkWalk(file, order, from);
        while (walk.hasNext()) {
            Chunk chunk = walk.next();
            if (!chunk.isNamed() || chunk.body() + chunk.size() > file.size()) {
                return false;
            }
            walk.leave(chunk, chunk.size());
        }
        return true;
    }
}
