package offtape.core.machine;

import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;

/**
 * Filters a stream at a multiple of its sample rate (or at the rate itself) by transforms with
 * overlap: the exact linear convolution of the stream, zeros put between its samples, with the
 * kernel. Chunk by chunk, with a lag of the geometry's reach.
 */
final class Upsampler {

    private final BlockGeometry blocks;
    private final int factor;
    private final double[] gains;
    private final double[] window;

    /**
     * A filter in its state at the start of silence.
     *
     * @param factor output samples a sample of input, 1 or more
     * @param kernel filter at the output's rate, reaching no further than the geometry allows; its
     *     gain is multiplied by the factor so that levels stay
     */
    Upsampler(BlockGeometry blocks, int factor, Kernel kernel) {
        if (kernel.half() > factor * blocks.reach()) {
            throw new IllegalArgumentException("the kernel is longer than the blocks allow");
        }
        this.blocks = blocks;
        this.factor = factor;
        this.gains = kernel.gains(factor * blocks.transform());
        for (int k = 0; k < gains.length; k++) {
            gains[k] *= factor;
        }
        this.window = new double[blocks.transform()];
    }

    /** Takes the next chunk and returns factor·chunk samples, {@code reach} samples behind it. */
    double[] next(double[] chunk) {
        int n = blocks.transform();
        System.arraycopy(window, chunk.length, window, 0, n - chunk.length);
        System.arraycopy(chunk, 0, window, n - chunk.length, chunk.length);
        double[] wide = RealFft.ofSize(factor * n).inverse(images(window));
        double[] out = new double[factor * chunk.length];
        System.arraycopy(wide, factor * blocks.reach(), out, 0, out.length);
        return out;
    }

    // Zeros between the samples repeat the spectrum: bin k of the long one is bin k mod n of the
    // short one, or the conjugate of bin n − k.
    private Spectrum images(double[] samples) {
        int n = samples.length;
        Spectrum narrow = RealFft.ofSize(n).forward(samples);
        double[] re = new double[gains.length];
        double[] im = new double[gains.length];
        for (int k = 0; k < gains.length; k++) {
            int bin = k % n;
            boolean mirrored = 2 * bin > n;
            int stored = mirrored ? n - bin : bin;
            re[k] = gains[k] * narrow.re(stored);
            im[k] = (mirrored ? -gains[k] : gains[k]) * narrow.im(stored);
        }
        return Spectrum.of(factor * n, re, im);
    }
}
