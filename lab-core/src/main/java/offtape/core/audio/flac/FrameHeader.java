package offtape.core.audio.flac;

import offtape.core.text.Sentences;

/**
 * The head of a frame (RFC 9639, section 9.1).
 *
 * @param isVariable whether block sizes vary, so that {@code number} counts samples and not frames
 * @param blockSize samples a channel, 1 to 65536
 * @param assignment how the channels are coded: below 8 each by itself, else a pair
 * @param number place of the frame in the stream
 */
record FrameHeader(boolean isVariable, int blockSize, int assignment, long number) {

    private static final Sentences SAID = Sentences.near(FrameHeader.class);

    static final int LEFT_SIDE = 8;
    static final int SIDE_RIGHT = 9;
    static final int MID_SIDE = 10;

    private static final int SYNC = 0b111111111111100;
    private static final int[] RATES_HZ = {
        0, 88_200, 176_400, 192_000, 8000, 16_000, 22_050, 24_000, 32_000, 44_100, 48_000, 96_000
    };
    private static final int[] BITS = {0, 8, 12, -1, 16, 20, 24, 32};

    /**
     * Reads a head.
     *
     * @throws FlacFault if there is none, its checksum does not agree, or it has another format
     *     than the stream
     */
    static FrameHeader read(BitReader in, StreamInfo stream) throws FlacFault {
        in.resetChecksums();
        if (in.unsigned(15) != SYNC) {
            throw FlacFault.damaged(SAID.say("block.none"));
        }
        boolean isVariable = in.unsigned(1) == 1;
        int sizeCode = (int) in.unsigned(4);
        int rateCode = (int) in.unsigned(4);
        int assignment = (int) in.unsigned(4);
        int bitsCode = (int) in.unsigned(3);
        in.unsigned(1);
        long number = codedNumber(in);
        int blockSize = blockSize(in, sizeCode);
        long rate = rateHz(in, rateCode);
        int checksum = in.headerChecksum();
        if (in.unsigned(8) != checksum) {
            throw FlacFault.damaged(SAID.say("block.head-checksum"));
        }
        requireSame(rate, stream.sampleRateHz());
        requireSame(BITS[bitsCode], stream.bits());
        requireSame(assignment < LEFT_SIDE ? assignment + 1 : 2, stream.channels());
        if (blockSize == 0 || assignment > MID_SIDE) {
            throw FlacFault.damaged(SAID.say("block.unknown-form"));
        }
        return new FrameHeader(isVariable, blockSize, assignment, number);
    }

    private static void requireSame(long here, int inTheStream) throws FlacFault {
        if (here != 0 && here != inTheStream) {
            throw FlacFault.damaged(SAID.say("block.other-format"));
        }
    }

    /** A number of up to 36 bits in the manner of UTF-8. */
    private static long codedNumber(BitReader in) throws FlacFault {
        long first = in.unsigned(8);
        int ones = Long.numberOfLeadingZeros(~(first << 56));
        if (ones == 1 || ones > 7) {
            throw FlacFault.damaged(SAID.say("block.illegible"));
        }
        long number = first & (0x7F >> ones);
        for (int i = 1; i < ones; i++) {
            number = number << 6 | in.unsigned(8) & 0x3F;
        }
        return number;
    }

    private static int blockSize(BitReader in, int code) throws FlacFault {
        return switch (code) {
            case 0 -> 0;
            case 1 -> 192;
            case 2, 3, 4, 5 -> 144 << code;
            case 6 -> (int) in.unsigned(8) + 1;
            case 7 -> (int) in.unsigned(16) + 1;
            default -> 1 << code;
        };
    }

    private static long rateHz(BitReader in, int code) throws FlacFault {
        return switch (code) {
            case 12 -> 1000 * in.unsigned(8);
            case 13 -> in.unsigned(16);
            case 14 -> 10 * in.unsigned(16);
            case 15 -> -1;
            default -> RATES_HZ[code];
        };
    }
}
