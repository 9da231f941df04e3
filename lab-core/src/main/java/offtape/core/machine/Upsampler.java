package offtape.core.machine;

import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;

/**
 * Filters a stream at a multiple of its sample rate (or at the rate itself) by transforms with
 * overlap: the linear convolution of the stream, zeros put between its samples, with the kernel.
 * Chunk by chunk, with a lag of the geometry's reach. The kernel must stop at half the stream's
 * rate; what it would still let pass above, below −120 dB, is left out.
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
        this.gains = kernel.gains(factor * blocks.transform(), blocks.transform() / 2);
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
        double[] wide = RealFft.ofSize(factor * n).inverse(widened(window));
        double[] out = new double[factor * chunk.length];
        System.arraycopy(wide, factor * blocks.reach(), out, 0, out.length);
        return out;
    }

    // Zeros between the samples repeat the spectrum; the kernel lets only the first copy pass.
    private Spectrum widened(double[] samples) {
        Spectrum narrow = RealFft.ofSize(samples.length).forward(samples);
        int bins = factor * samples.length / 2 + 1;
        double[] re = new double[bins];
        double[] im = new double[bins];
        for (int k = 0; k < narrow.bins(); k++) {
            re[k] = gains[k] * narrow.re(k);
            im[k] = gains[k] * narrow.im(k);
        }
        return Spectrum.of(factor * samples.length, re, im);
    }
}
