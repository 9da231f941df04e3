package offtape.core.audio.flac;

import offtape.core.text.Sentences;

/** What the prediction of a subframe leaves over, in Rice codes (RFC 9639, section 9.2.7). */
final class Residual {

    private static final Sentences SAID = Sentences.near(Residual.class);

    private Residual() {}

    /**
     * Reads the residual.
     *
     * @param out receives it from index {@code order} to {@code blockSize} − 1
     * @param order number of samples the prediction starts from
     */
    static void read(BitReader in, long[] out, int order, int blockSize) throws FlacFault {
        long method = in.unsigned(2);
        if (method > 1) {
            throw FlacFault.damaged(SAID.say("block.unknown-coding"));
        }
        int width = method == 0 ? 4 : 5;
        int partitions = 1 << in.unsigned(4);
        int size = blockSize / partitions;
        if (size * partitions != blockSize || size < order) {
            throw FlacFault.damaged(SAID.say("block.parts"));
        }
        for (int from = 0; from < blockSize; from += size) {
            partition(in, out, Math.max(order, from), from + size, width);
        }
    }

    private static void partition(BitReader in, long[] out, int from, int to, int width)
            throws FlacFault {
        int parameter = (int) in.unsigned(width);
        if (parameter == (1 << width) - 1) {
            int bits = (int) in.unsigned(5);
            for (int i = from; i < to; i++) {
                out[i] = in.signed(bits);
            }
            return;
        }
        // a residual has 32 bits at most
        long most = 0xFFFF_FFFFL >>> parameter;
        for (int i = from; i < to; i++) {
            long folded = in.unary(most) << parameter | in.unsigned(parameter);
            out[i] = folded >>> 1 ^ -(folded & 1);
        }
    }
}
