package offtape.core.machine;

/**
 * Filters a stream at a multiple of its sample rate (or at the rate itself), chunk by chunk, with a
 * lag of the geometry's reach: the linear convolution of the stream with the kernel.
 */
final class Upsampler {

    private final BlockGeometry blocks;
    private final int factor;
    private final RateChange change;
    private final double[] window;

    /**
     * A filter in its state at the start of silence.
     *
     * @param factor output samples a sample of input, 1 or more
     * @param kernel filter at the output's rate, reaching no further than the geometry allows
     * @see RateChange
     */
    Upsampler(BlockGeometry blocks, int factor, Kernel kernel) {
        if (kernel.half() > factor * blocks.reach()) {
            throw new IllegalArgumentException("the kernel is longer than the blocks allow");
        }
        this.blocks = blocks;
        this.factor = factor;
        this.change = new RateChange(blocks.transform(), factor, kernel);
        this.window = new double[blocks.transform()];
    }

    /** Takes the next chunk and returns factor·chunk samples, {@code reach} samples behind it. */
    double[] next(double[] chunk) {
        blocks.shift(window, chunk);
        return blocks.middle(change.up(window), factor);
    }
}
