package offtape.core.audio.flac;

import java.util.Arrays;
import offtape.core.text.Sentences;

/** One channel of a frame (RFC 9639, section 9.2). */
final class Subframe {

    private static final Sentences SAID = Sentences.near(Subframe.class);

    private static final int CONSTANT = 0;
    private static final int VERBATIM = 1;
    private static final int FIXED = 8;
    private static final int LINEAR = 32;
    private static final int MOST_FIXED = 4;

    /** Coefficients of the fixed predictors of order 0 to 4, for the nearest sample first. */
    private static final long[][] FIXED_COEFFICIENTS = {
        {}, {1}, {2, -1}, {3, -3, 1}, {4, -6, 4, -1}
    };

    private final BitReader in;
    private final long[] out;
    private final int blockSize;

    private Subframe(BitReader in, long[] out, int blockSize) {
        this.in = in;
        this.out = out;
        this.blockSize = blockSize;
    }

    /**
     * Reads one channel.
     *
     * @param out receives the samples
     * @param bits size of a sample of this channel, 1 to 33
     */
    static void read(BitReader in, long[] out, int blockSize, int bits) throws FlacFault {
        new Subframe(in, out, blockSize).read(bits);
    }

    private void read(int bits) throws FlacFault {
        int type = (int) in.unsigned(7);
        int wasted = in.unsigned(1) == 0 ? 0 : (int) in.unary(bits) + 1;
        if (wasted >= bits) {
            throw FlacFault.damaged(SAID.say("block.no-bits"));
        }
        content(type, bits - wasted);
        for (int i = 0; i < blockSize && wasted > 0; i++) {
            out[i] <<= wasted;
        }
    }

    private void content(int type, int bits) throws FlacFault {
        if (type == CONSTANT) {
            Arrays.fill(out, 0, blockSize, in.signed(bits));
        } else if (type == VERBATIM) {
            verbatim(blockSize, bits);
        } else if (type >= FIXED && type <= FIXED + MOST_FIXED) {
            int order = type - FIXED;
            verbatim(order, bits);
            Residual.read(in, out, order, blockSize);
            predict(FIXED_COEFFICIENTS[order], 0);
        } else if (type >= LINEAR && type < 2 * LINEAR) {
            linear(type - LINEAR + 1, bits);
        } else {
            throw FlacFault.damaged(SAID.say("block.unknown-coding"));
        }
    }

    private void verbatim(int count, int bits) throws FlacFault {
        if (count > blockSize) {
            throw FlacFault.damaged(SAID.say("block.too-short"));
        }
        for (int i = 0; i < count; i++) {
            out[i] = in.signed(bits);
        }
    }

    private void linear(int order, int bits) throws FlacFault {
        verbatim(order, bits);
        int precision = (int) in.unsigned(4) + 1;
        int shift = (int) in.signed(5);
        if (precision > 15 || shift < 0) {
            throw FlacFault.damaged(SAID.say("block.unknown-coding"));
        }
        long[] coefficients = new long[order];
        for (int i = 0; i < order; i++) {
            coefficients[i] = in.signed(precision);
        }
        Residual.read(in, out, order, blockSize);
        predict(coefficients, shift);
    }

    /** Adds the prediction from the samples before to the residual that stands in their place. */
    private void predict(long[] coefficients, int shift) {
        int order = coefficients.length;
        for (int i = order; i < blockSize; i++) {
            long sum = 0;
            for (int j = 0; j < order; j++) {
                sum += coefficients[j] * out[i - 1 - j];
            }
            out[i] += sum >> shift;
        }
    }
}
