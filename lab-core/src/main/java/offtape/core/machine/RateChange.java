package offtape.core.machine;

import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;

/**
 * Filters one window of samples on the way to a multiple of its rate and back, by transforms: the
 * cyclic convolution with the kernel, right wherever the kernel does not reach over the window's
 * ends. The kernel must stop at half the lower rate; what it would still let pass above, below −120
 * dB, is left out. Immutable.
 */
final class RateChange {

    private final int factor;
    private final RealFft narrow;
    private final RealFft wide;
    private final double[] gains;

    /**
     * A change between a rate and its multiple.
     *
     * @param window samples of a window at the lower rate
     * @param factor multiple, 1 or more
     * @param kernel filter at the higher rate
     */
    RateChange(int window, int factor, Kernel kernel) {
        this.factor = factor;
        this.narrow = RealFft.ofSize(window);
        this.wide = RealFft.ofSize(factor * window);
        this.gains = kernel.gains(factor * window, window / 2);
    }

    /** Zeros put between the samples repeat the spectrum; only the first copy passes. */
    double[] up(double[] window) {
        return wide.inverse(filtered(narrow.forward(window), wide.size(), factor));
    }

    /** Keeping every factor-th sample folds the spectrum; only its first part is left. */
    double[] down(double[] window) {
        return narrow.inverse(filtered(wide.forward(window), narrow.size(), 1.0 / factor));
    }

    private Spectrum filtered(Spectrum spectrum, int samples, double scale) {
        double[] re = new double[samples / 2 + 1];
        double[] im = new double[re.length];
        for (int k = 0; k < gains.length; k++) {
            double gain = scale * gains[k];
            re[k] = gain * spectrum.re(k);
            im[k] = gain * spectrum.im(k);
        }
        return Spectrum.of(samples, re, im);
    }
}
