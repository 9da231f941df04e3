package offtape.core.machine;

import java.util.function.DoubleUnaryOperator;
import offtape.core.dsp.KaiserWindow;
import offtape.core.dsp.LowPass;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;

/**
 * A filter of finite length and zero phase: taps symmetric about the middle one.
 *
 * @param rateHz sample rate of the taps
 * @param taps odd number of taps, symmetric
 */
record Kernel(double rateHz, double[] taps) {

    private static final double ATTENUATION_DB = 125;

    /**
     * A low-pass of unit gain, ripple and stop band below −120 dB.
     *
     * @param passHz end of the pass band
     * @param stopHz start of the stop band
     */
    static Kernel lowPass(double rateHz, double passHz, double stopHz) {
        return new Kernel(rateHz, LowPass.design(passHz, stopHz, ATTENUATION_DB, rateHz).taps());
    }

    /**
     * The filter nearest to a smooth magnitude within {@code 2·half + 1} taps; detail finer than
     * about {@code 4·rate/half} is smoothed. Its exact response is {@link #response}.
     *
     * @param half taps on either side of the middle
     * @param magnitude gain at a frequency in hertz, 0 … rate/2
     */
    static Kernel ofMagnitude(double rateHz, int half, DoubleUnaryOperator magnitude) {
        int points = RealFft.nextPowerOfTwo(16 * half);
        double[] re = new double[points / 2 + 1];
        for (int k = 0; k < re.length; k++) {
            re[k] = magnitude.applyAsDouble(k * rateHz / points);
        }
        double[] cyclic =
                RealFft.ofSize(points).inverse(Spectrum.of(points, re, new double[re.length]));
        double beta = KaiserWindow.beta(60);
        double[] taps = new double[2 * half + 1];
        for (int i = -half; i <= half; i++) {
            taps[half + i] =
                    cyclic[Math.floorMod(i, points)] * KaiserWindow.value(i / (half + 1.0), beta);
        }
        return new Kernel(rateHz, taps);
    }

    /** Taps on either side of the middle. */
    int half() {
        return taps.length / 2;
    }

    /** This filter followed by another of the same rate. */
    Kernel then(Kernel other) {
        double[] product = new double[taps.length + other.taps.length - 1];
        for (int i = 0; i < taps.length; i++) {
            for (int j = 0; j < other.taps.length; j++) {
                product[i + j] += taps[i] * other.taps[j];
            }
        }
        return new Kernel(rateHz, product);
    }

    /** The exact gain at a frequency in hertz: real, as the phase is zero. */
    double response(double frequencyHz) {
        int half = half();
        double omega = 2 * Math.PI * frequencyHz / rateHz;
        double stepCos = Math.cos(omega);
        double stepSin = Math.sin(omega);
        double cos = 1;
        double sin = 0;
        double sum = taps[half] / 2;
        for (int i = 1; i <= half; i++) {
            double next = cos * stepCos - sin * stepSin;
            sin = sin * stepCos + cos * stepSin;
            cos = next;
            sum += taps[half + i] * cos;
        }
        return 2 * sum;
    }

    /** The gains at the bins 0 … last of a transform of {@code points} samples. */
    double[] gains(int points, int last) {
        double[] cyclic = new double[points];
        for (int i = -half(); i <= half(); i++) {
            cyclic[Math.floorMod(i, points)] = taps[half() + i];
        }
        Spectrum spectrum = RealFft.ofSize(points).forward(cyclic);
        double[] gains = new double[last + 1];
        for (int k = 0; k < gains.length; k++) {
            gains[k] = spectrum.re(k);
        }
        return gains;
    }
}
