package offtape.report.measure.noise;

import java.util.Arrays;
import offtape.core.audio.MemoryAudio;
import offtape.core.dsp.Baseband;
import offtape.core.dsp.Downconverter;
import offtape.core.dsp.PhaseLaw;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;

/**
 * The spectrum of one whole stretch of sound under a Hann window, finely sampled, in which steady
 * lines stand out of noise.
 */
final class LineSpectrum {

    /** Longer stretches are cut to their middle, seconds: the mains do not hold still for ever. */
    private static final double LONGEST_S = 20;

    /** Points of the transform for each of the window's own lines, at least. */
    private static final int FINENESS = 4;

    /** Width of a Hann line's power in lines of a rectangular window. */
    static final double WIDTH = 1.5;

    /** Noise is read beside a line from this far … */
    private static final double BESIDE_FROM_HZ = 4;

    /** … to this far, and no nearer and no less than so many lines. */
    private static final double BESIDE_TO_HZ = 12;

    private static final int BESIDE_FROM_LINES = 5;
    private static final int BESIDE_TO_LINES = 24;

    private final double[] samples;
    private final double rateHz;
    private final Spectrum spectrum;
    private final double scale;

    /** Lines up to here are kept where only the lows are of interest, Hz. */
    private static final double PASS_HZ = 800;

    private static final double STOP_HZ = 1300;

    /** The spectrum of what lies under 800 Hz, which takes a fraction of the work and memory. */
    static LineSpectrum ofLows(double[] x, int rateHz) {
        if (rateHz < 4 * STOP_HZ) {
            return new LineSpectrum(x, rateHz);
        }
        Baseband lows =
                Downconverter.of(PASS_HZ, STOP_HZ, rateHz)
                        .convert(
                                new MemoryAudio("silence", rateHz, x),
                                0,
                                (double) x.length / rateHz,
                                PhaseLaw.steady(0))
                        .get(0);
        return new LineSpectrum(lows.re(), lows.rateHz());
    }

    /** Transforms a stretch of at least 16 samples. */
    LineSpectrum(double[] x, double rateHz) {
        int length = Math.min(x.length, (int) (LONGEST_S * rateHz));
        int from = (x.length - length) / 2;
        this.samples = Arrays.copyOfRange(x, from, from + length);
        this.rateHz = rateHz;
        double mean = Arrays.stream(samples).average().orElseThrow();
        double[] windowed = new double[length];
        double sum = 0;
        for (int i = 0; i < length; i++) {
            double w = 0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 0.5) / length);
            sum += w;
            windowed[i] = w * (samples[i] - mean);
        }
        spectrum = RealFft.ofSize(RealFft.nextPowerOfTwo(FINENESS * length)).forward(windowed);
        scale = 2 / (sum * sum);
    }

    /** The stretch itself. */
    double[] samples() {
        return samples;
    }

    /** Length in seconds: lines lie a reciprocal of that apart. */
    double seconds() {
        return samples.length / rateHz;
    }

    /** Frames a second. */
    double rateHz() {
        return rateHz;
    }

    /** Mean square of a steady sine at a frequency, noise included; a parabola between points. */
    double power(double hz) {
        double place = hz * spectrum.length() / rateHz;
        int k = (int) Math.max(1, Math.min(spectrum.bins() - 2, Math.round(place)));
        double u = Math.max(-0.5, Math.min(0.5, place - k));
        double below = spectrum.power(k - 1);
        double at = spectrum.power(k);
        double above = spectrum.power(k + 1);
        double between = at + u / 2 * (above - below) + u * u / 2 * (above - 2 * at + below);
        return scale * Math.max(0, between);
    }

    /** Mean square within so many lines to either side of a frequency, noise included. */
    double powerAround(double hz, double lines) {
        double binHz = rateHz / spectrum.length();
        int from = (int) Math.ceil((hz - lines / seconds()) / binHz);
        int to = (int) Math.floor((hz + lines / seconds()) / binHz);
        double sum = 0;
        for (int k = from; k <= to; k++) {
            sum += scale * spectrum.power(k);
        }
        return sum * binHz * seconds() / WIDTH;
    }

    /** Where the spectrum is highest within so many lines of a frequency, Hz. */
    double highest(double hz, double lines) {
        double binHz = rateHz / spectrum.length();
        int from = (int) Math.ceil((hz - lines / seconds()) / binHz);
        int to = (int) Math.floor((hz + lines / seconds()) / binHz);
        int best = from;
        for (int k = from; k <= to; k++) {
            best = spectrum.power(k) > spectrum.power(best) ? k : best;
        }
        return best * binHz;
    }

    /**
     * Mean square that noise alone shows at a frequency: from the lines beside, whose median for
     * noise is ln 2 of the mean and is not moved by stray lines, or from their ninth decile, which
     * is ln 10 of it, if that tells more: where many lines stand out, as of music, one more means
     * little.
     */
    double noise(double hz) {
        double line = 1 / seconds();
        int from = (int) Math.ceil(Math.max(BESIDE_FROM_HZ, BESIDE_FROM_LINES * line) / line);
        int to = (int) Math.ceil(Math.max(BESIDE_TO_HZ, BESIDE_TO_LINES * line) / line);
        double[] beside = new double[2 * (to - from)];
        for (int d = from; d < to; d++) {
            beside[2 * (d - from)] = power(Math.abs(hz - d * line));
            beside[2 * (d - from) + 1] = power(hz + d * line);
        }
        Arrays.sort(beside);
        double median = (beside[beside.length / 2 - 1] + beside[beside.length / 2]) / 2;
        double decile = beside[9 * beside.length / 10];
        return Math.max(median / Math.log(2), decile / Math.log(10));
    }
}
