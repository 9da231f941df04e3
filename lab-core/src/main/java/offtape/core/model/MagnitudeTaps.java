package offtape.core.model;

import java.util.function.DoubleUnaryOperator;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;

/** Filters of zero phase from a magnitude, symmetric about their middle tap. */
public final class MagnitudeTaps {

    private MagnitudeTaps() {}

    /**
     * The taps.
     *
     * @param gain gain at a frequency in hertz, 0 … rate/2
     * @param rateHz sample rate
     * @param half taps to either side of the middle, a power of two; the outer half fades out
     */
    public static double[] of(DoubleUnaryOperator gain, double rateHz, int half) {
        int points = 4 * half;
        double[] re = new double[points / 2 + 1];
        for (int k = 0; k < re.length; k++) {
            re[k] = gain.applyAsDouble(k * rateHz / points);
        }
        double[] cyclic =
                RealFft.ofSize(points).inverse(Spectrum.of(points, re, new double[re.length]));
        double[] taps = new double[2 * half + 1];
        for (int i = -half; i <= half; i++) {
            double place = 2.0 * Math.abs(i) / half - 1;
            double fade = place <= 0 ? 1 : 0.5 + 0.5 * Math.cos(Math.PI * place);
            taps[half + i] = fade * cyclic[Math.floorMod(i, points)];
        }
        return taps;
    }
}
