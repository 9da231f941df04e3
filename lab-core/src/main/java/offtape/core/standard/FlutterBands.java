package offtape.core.standard;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;

/**
 * The bands of unweighted speed deviation, as gains without phase. The magnitudes are
 * Butterworth's: order 3 at 0.2 Hz, order 3 at 6 Hz where wow and flutter part, order 10 at 200 Hz.
 * The powers of wow and flutter add up to the whole at every frequency.
 */
final class FlutterBands {

    private static final double LOWEST_HZ = 0.2;
    private static final double PARTING_HZ = 6;
    private static final double HIGHEST_HZ = 200;

    /** Stretch mirrored at both ends, against transients there. */
    private static final double MIRRORED_SECONDS = 8;

    private FlutterBands() {}

    /** Gain of the whole band, 0.2 Hz to 200 Hz. */
    static double whole(double frequencyHz) {
        return Math.sqrt(
                lowPower(LOWEST_HZ / frequencyHz, 3) * lowPower(frequencyHz / HIGHEST_HZ, 10));
    }

    /** Gain of wow, 0.2 Hz to 6 Hz. */
    static double wow(double frequencyHz) {
        return whole(frequencyHz) * Math.sqrt(lowPower(frequencyHz / PARTING_HZ, 3));
    }

    /** Gain of flutter, 6 Hz to 200 Hz. */
    static double flutter(double frequencyHz) {
        return whole(frequencyHz) * Math.sqrt(lowPower(PARTING_HZ / frequencyHz, 3));
    }

    /** The signal through a gain, as long as before. */
    static double[] apply(DoubleUnaryOperator gain, double[] x, double sampleRateHz) {
        int margin = Math.min(x.length - 1, (int) Math.round(MIRRORED_SECONDS * sampleRateHz));
        int n = RealFft.nextPowerOfTwo(x.length + 2 * margin);
        double[] extended = mirrored(x, margin);
        RealFft fft = RealFft.ofSize(n);
        Spectrum spectrum = fft.forward(extended);
        double binHz = spectrum.binHz(sampleRateHz);
        double[] filtered =
                fft.inverse(spectrum.times(k -> k == 0 ? 0 : gain.applyAsDouble(k * binHz)));
        double[] y = new double[x.length];
        System.arraycopy(filtered, margin, y, 0, y.length);
        return y;
    }

    private static double lowPower(double ratio, int order) {
        return 1 / (1 + Math.pow(ratio, 2 * order));
    }

    private static double[] mirrored(double[] x, int margin) {
        double[] extended = new double[x.length + 2 * margin];
        // Without its mean, so that what follows the stretch as silence makes no step.
        double mean = Arrays.stream(x).average().orElse(0);
        for (int i = 0; i < x.length; i++) {
            extended[margin + i] = x[i] - mean;
        }
        int last = margin + x.length - 1;
        for (int j = 1; j <= margin; j++) {
            extended[margin - j] = extended[margin + j];
            extended[last + j] = extended[last - j];
        }
        return extended;
    }
}
