package offtape.core.machine;

import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;

/**
 * Filters a stream and keeps every factor-th sample, by transforms with overlap: the linear
 * convolution with the kernel. Chunk by chunk, with a lag of the geometry's reach. The kernel must
 * stop at half the output's rate; what it would still let pass above, below −120 dB, is left out.
 */
final class Decimator {

    private final BlockGeometry blocks;
    private final int factor;
    private final double[] gains;
    private final double[] window;

    /**
     * A filter in its state at the start of silence.
     *
     * @param factor input samples a sample of output
     * @param kernel filter at the input's rate, reaching no further than the geometry allows
     */
    Decimator(BlockGeometry blocks, int factor, Kernel kernel) {
        if (kernel.half() > factor * blocks.reach()) {
            throw new IllegalArgumentException("the kernel is longer than the blocks allow");
        }
        this.blocks = blocks;
        this.factor = factor;
        this.gains = kernel.gains(factor * blocks.transform(), blocks.transform() / 2);
        this.window = new double[factor * blocks.transform()];
    }

    /** Takes factor·chunk samples and returns a chunk, {@code reach} samples behind it. */
    double[] next(double[] wide) {
        System.arraycopy(window, wide.length, window, 0, window.length - wide.length);
        System.arraycopy(wide, 0, window, window.length - wide.length, wide.length);
        double[] samples = RealFft.ofSize(blocks.transform()).inverse(folded());
        double[] out = new double[blocks.chunk()];
        System.arraycopy(samples, blocks.reach(), out, 0, out.length);
        return out;
    }

    // Keeping every factor-th sample folds the spectrum; the kernel leaves only its first part.
    private Spectrum folded() {
        int n = blocks.transform();
        Spectrum wide = RealFft.ofSize(window.length).forward(window);
        double[] re = new double[n / 2 + 1];
        double[] im = new double[n / 2 + 1];
        for (int k = 0; k < re.length; k++) {
            re[k] = gains[k] * wide.re(k) / factor;
            im[k] = gains[k] * wide.im(k) / factor;
        }
        return Spectrum.of(n, re, im);
    }
}
