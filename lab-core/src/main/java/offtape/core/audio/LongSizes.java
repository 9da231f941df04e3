package offtape.core.audio;

import java.nio.ByteBuffer;
import java.util.HashMap;
import java.util.Map;

/**
 * The 64-bit sizes of an RF64 or BW64 file: its {@code ds64} chunk (EBU Tech 3306, ITU-R BS.2088).
 * Layout: size of the file, size of {@code data}, number of frames (8 bytes each), number of
 * further entries (4 bytes), then for each an identifier and an 8-byte size.
 */
final class LongSizes {

    /** Smallest length of the chunk's content, in bytes. */
    static final int SHORTEST = 28;

    private static final int ENTRY = 12;
    private static final int MOST_ENTRIES = 256;

    private final Map<String, Long> sizes = new HashMap<>();

    private LongSizes() {}

    /** What a file without the chunk has. */
    static LongSizes none() {
        return new LongSizes();
    }

    /** Reads the chunk; entries beyond its own end or a sane number are left out. */
    static LongSizes read(FileBytes file, Chunk chunk) {
        int wanted = (int) Math.min(chunk.size(), SHORTEST + MOST_ENTRIES * ENTRY);
        ByteBuffer body = file.peek(chunk.body(), wanted);
        LongSizes all = new LongSizes();
        if (body.remaining() >= SHORTEST) {
            all.sizes.put("data", body.getLong(8));
            long entries = body.getInt(24) & 0xFFFF_FFFFL;
            body.position(SHORTEST);
            for (long i = 0; i < entries && body.remaining() >= ENTRY; i++) {
                all.sizes.putIfAbsent(Chunk.fourCharacters(body), body.getLong());
            }
        }
        return all;
    }

    /**
     * The true size of a chunk in bytes; {@link Long#MAX_VALUE} if it says "look it up" and there
     * is nothing to be found or more than 2^63.
     */
    long of(Chunk chunk) {
        if (chunk.size() != Chunk.NO_SIZE) {
            return chunk.size();
        }
        long size = sizes.getOrDefault(chunk.id(), Long.MAX_VALUE);
        return size < 0 ? Long.MAX_VALUE : size;
    }
}
