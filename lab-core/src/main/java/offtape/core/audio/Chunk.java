package offtape.core.audio;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/**
 * The head of one chunk of a RIFF or AIFF file.
 *
 * @param id four characters, each a byte
 * @param body where its content begins in the file, in bytes
 * @param size stated size of the content in bytes, 0 to 2^32 − 1
 */
record Chunk(String id, long body, long size) {

    /** Size of identifier and size field, in bytes. */
    static final int HEAD = 8;

    /** Size that says "look it up in ds64" or "not known". */
    static final long NO_SIZE = 0xFFFF_FFFFL;

    /**
     * The chunk at a place; at least {@link #HEAD} bytes must be there.
     *
     * @param order which byte of a size comes first
     */
    static Chunk at(FileBytes file, long position, ByteOrder order) {
        ByteBuffer head = file.peek(position, HEAD).order(order);
        return new Chunk(fourCharacters(head), position + HEAD, head.getInt() & NO_SIZE);
    }

    /** Reads an identifier, one byte a character. */
    static String fourCharacters(ByteBuffer from) {
        char[] id = new char[4];
        for (int i = 0; i < id.length; i++) {
            id[i] = (char) (from.get() & 0xFF);
        }
        return new String(id);
    }

    /** Where the next chunk begins if this one holds {@code size} bytes: at an even place. */
    long end(long size) {
        return body + size + (size & 1);
    }

    /** Whether the identifier consists of printable characters, as every known one does. */
    boolean isNamed() {
        return id.chars().allMatch(c -> c >= ' ' && c < 0x7F);
    }
}
