package offtape.core.machine;

/** Takes the return of a simulated machine, block by block. */
@FunctionalInterface
public interface FrameSink {

    /**
     * Takes the next frames.
     *
     * @param block one array a channel (left, right), full-scale units; used again for the next
     *     block, so what is kept must be copied
     * @param count frames of the block that count, from its start
     */
    void write(double[][] block, int count);
}
