package offtape.core.audio.flac;

import offtape.core.text.Sentences;

/**
 * Numbers of any width from a stream of bytes, most significant bit first, with the two checksums
 * of a frame (RFC 9639, sections 9.1.8 and 9.3) running along. No byte is taken before it is
 * needed, so that at a byte boundary the checksums cover just what was read.
 */
final class BitReader {

    private static final Sentences SAID = Sentences.near(BitReader.class);

    private static final int BUFFER_BYTES = 1 << 16;

    private final ByteSupply supply;
    private final byte[] buffer = new byte[BUFFER_BYTES];
    private int position;
    private int limit;

    /** Bits not read yet, in the lowest {@link #held} places. */
    private long bits;

    private int held;

    private final Crc headerCrc = new Crc(8, 0x07);
    private final Crc frameCrc = new Crc(16, 0x8005);

    BitReader(ByteSupply supply) {
        this.supply = supply;
    }

    /** Whether the bytes have ended; asked at a byte boundary. */
    boolean isAtEnd() {
        if (position == limit) {
            limit = Math.max(0, supply.next(buffer));
            position = 0;
        }
        return position == limit;
    }

    private int octet() throws FlacFault {
        if (isAtEnd()) {
            throw FlacFault.cut();
        }
        int octet = buffer[position++] & 0xFF;
        headerCrc.add(octet);
        frameCrc.add(octet);
        return octet;
    }

    /** An unsigned number of 0 to 36 bits. */
    long unsigned(int width) throws FlacFault {
        while (held < width) {
            bits = bits << 8 | octet();
            held += 8;
        }
        held -= width;
        return bits >>> held & (1L << width) - 1;
    }

    /** A number of 0 to 36 bits in two's complement. */
    long signed(int width) throws FlacFault {
        int spare = Long.SIZE - width;
        return width == 0 ? 0 : unsigned(width) << spare >> spare;
    }

    /**
     * A unary number: the zeros before the next one, which is taken as well.
     *
     * @param most where a larger number cannot be right
     */
    long unary(long most) throws FlacFault {
        long zeros = 0;
        while (unsigned(1) == 0) {
            zeros++;
            if ((bits & (1L << held) - 1) == 0) {
                zeros += held;
                held = 0;
            }
            if (zeros > most) {
                throw FlacFault.damaged(SAID.say("number-too-large"));
            }
        }
        return zeros;
    }

    /** Leaves out what remains of the byte. */
    void align() {
        held = 0;
    }

    /** Leaves out whole bytes; asked at a byte boundary. */
    void skip(long count) throws FlacFault {
        for (long left = count; left > 0; ) {
            if (isAtEnd()) {
                throw FlacFault.cut();
            }
            int step = (int) Math.min(left, limit - position);
            position += step;
            left -= step;
        }
    }

    /** Begins both checksums anew. */
    void resetChecksums() {
        headerCrc.reset();
        frameCrc.reset();
    }

    int headerChecksum() {
        return headerCrc.value();
    }

    int frameChecksum() {
        return frameCrc.value();
    }
}
