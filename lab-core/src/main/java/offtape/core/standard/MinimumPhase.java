package offtape.core.standard;

import java.util.function.DoubleUnaryOperator;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;

/**
 * Impulse responses of minimum phase from a magnitude alone, by folding the real cepstrum
 * (Oppenheim and Schafer, Discrete-Time Signal Processing, section on the complex cepstrum).
 */
public final class MinimumPhase {

    private static final double NEPER_PER_DB = Math.log(10) / 20;

    private MinimumPhase() {}

    /**
     * The impulse response whose magnitude is given.
     *
     * @param levelDb magnitude in dB at a frequency in hertz above 0
     * @param sampleRateHz sample rate
     * @param n points of the transform, even, large against the length of the response
     * @param taps length of the result, at most n; its last quarter fades out
     */
    public static double[] impulseResponse(
            DoubleUnaryOperator levelDb, double sampleRateHz, int n, int taps) {
        RealFft fft = RealFft.ofSize(n);
        double[] cepstrum = fft.inverse(logMagnitude(levelDb, sampleRateHz / n, n));
        for (int j = 1; j < n / 2; j++) {
            cepstrum[j] *= 2;
            cepstrum[n - j] = 0;
        }
        double[] response = fft.inverse(exponential(fft.forward(cepstrum)));
        return faded(response, taps);
    }

    private static Spectrum logMagnitude(DoubleUnaryOperator levelDb, double binHz, int n) {
        double[] re = new double[n / 2 + 1];
        for (int k = 0; k < re.length; k++) {
            // A zero at 0 Hz has no logarithm: its bin takes the level a quarter bin up.
            re[k] = NEPER_PER_DB * levelDb.applyAsDouble(k == 0 ? binHz / 4 : k * binHz);
        }
        return Spectrum.of(n, re, new double[re.length]);
    }

    private static Spectrum exponential(Spectrum s) {
        double[] re = new double[s.bins()];
        double[] im = new double[s.bins()];
        for (int k = 0; k < re.length; k++) {
            double magnitude = Math.exp(s.re(k));
            re[k] = magnitude * Math.cos(s.im(k));
            im[k] = magnitude * Math.sin(s.im(k));
        }
        return Spectrum.of(s.length(), re, im);
    }

    private static double[] faded(double[] response, int taps) {
        double[] h = new double[taps];
        System.arraycopy(response, 0, h, 0, taps);
        int fade = taps / 4;
        for (int j = 0; j < fade; j++) {
            h[taps - fade + j] *= 0.5 * (1 + Math.cos(Math.PI * (j + 0.5) / fade));
        }
        return h;
    }
}
