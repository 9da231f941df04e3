package offtape.core.audio;

import java.nio.ByteOrder;

/**
 * Where a file says that its sound lies.
 *
 * @param chunk the chunk that holds it
 * @param offset bytes at the beginning of the chunk's content that are not sound
 * @param statedBytes length of the sound, {@link Long#MAX_VALUE} if it is not stated
 * @param order which byte of a chunk's size comes first
 */
record SoundPlace(Chunk chunk, long offset, long statedBytes, ByteOrder order) {

    /** Where the sound begins in the file, in bytes. */
    long start() {
        return chunk.body() + offset;
    }

    /** Whether behind a length of sound there is nothing but whole chunks up to the end. */
    boolean isFollowedByChunks(FileBytes file, long bytes) {
        return ChunkWalk.isChunksToTheEnd(file, order, chunk.end(offset + bytes));
    }
}
