package offtape.core.audio.flac;

import offtape.core.text.Sentences;

/**
 * Decodes a FLAC stream (RFC 9639) block by block: every kind of subframe, 4 to 32 bits, up to 8
 * channels, fixed and variable block sizes. Both checksums of every frame and the order of the
 * frames are verified. Descriptions, pictures and tables of places are skipped. Cost in memory: one
 * block, at most 65536 samples a channel.
 *
 * <p>A file is read once from its beginning to its end, so places are not sought in it.
 */
public final class FlacDecoder {

    private static final Sentences SAID = Sentences.near(FlacDecoder.class);

    private static final int SMALLEST_BITS = 4;
    private static final int MARK = 0x664C_6143;
    private static final int DESCRIPTION = 0;

    private final BitReader in;
    private final StreamInfo info;
    private final long[][] samples;
    private long frames;
    private long blocks;
    private long firstNumber;

    private FlacDecoder(BitReader in, StreamInfo info) {
        this.in = in;
        this.info = info;
        this.samples = new long[info.channels()][0];
    }

    /**
     * Reads up to where the sound begins.
     *
     * @param bytes the stream from its mark {@code fLaC} on
     * @throws FlacFault if it is no such stream or ends before the sound
     */
    public static FlacDecoder open(ByteSupply bytes) throws FlacFault {
        BitReader in = new BitReader(bytes);
        if (in.unsigned(32) != MARK) {
            throw FlacFault.damaged(SAID.say("no-mark"));
        }
        StreamInfo info = null;
        boolean isLast = false;
        while (!isLast) {
            isLast = in.unsigned(1) == 1;
            long type = in.unsigned(7);
            long length = in.unsigned(24);
            if (type == DESCRIPTION && info == null) {
                info = StreamInfo.read(in, length);
            } else {
                in.skip(length);
            }
        }
        if (info == null || info.bits() < SMALLEST_BITS) {
            throw FlacFault.damaged(SAID.say("description.missing"));
        }
        return new FlacDecoder(in, info);
    }

    /** What the stream says of itself. */
    public StreamInfo info() {
        return info;
    }

    /** Number of samples a channel decoded so far. */
    public long frames() {
        return frames;
    }

    /**
     * Decodes the next block.
     *
     * @return the number of samples a channel, now given by {@link #sample}; 0 at the end of the
     *     bytes or once as many were decoded as the stream states
     * @throws FlacFault if the block is damaged or the bytes end within it
     */
    public int next() throws FlacFault {
        if (info.frames() > 0 && frames >= info.frames() || in.isAtEnd()) {
            return 0;
        }
        FrameHeader header = FrameHeader.read(in, info);
        requireInOrder(header);
        for (int c = 0; c < samples.length; c++) {
            if (samples[c].length < header.blockSize()) {
                samples[c] = new long[header.blockSize()];
            }
            int bits = info.bits() + StereoPair.extraBits(header.assignment(), c);
            Subframe.read(in, samples[c], header.blockSize(), bits);
        }
        in.align();
        int checksum = in.frameChecksum();
        if (in.unsigned(16) != checksum) {
            throw FlacFault.damaged(SAID.say("block.checksum"));
        }
        StereoPair.undo(header.assignment(), samples, header.blockSize());
        frames += header.blockSize();
        blocks++;
        return header.blockSize();
    }

    /** A stream may be cut out of a longer one, but nothing may be missing within. */
    private void requireInOrder(FrameHeader header) throws FlacFault {
        if (blocks == 0) {
            firstNumber = header.number();
        }
        long place = header.number() - firstNumber;
        // before the head said which of the two is counted, it could be either
        boolean inOrder = place == frames || place == blocks && !header.isVariable();
        if (!inOrder) {
            throw FlacFault.damaged(SAID.say("block.order"));
        }
    }

    /**
     * The sample of the block decoded last, at most 2^(bits − 1) in magnitude in a stream that
     * keeps to its format.
     */
    public long sample(int channel, int index) {
        return samples[channel][index];
    }
}
