package offtape.core.standard;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Supplier;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;
import offtape.core.unit.Decibels;

/**
 * The bands that a speed deviation is read in. The weighted one is a minimum-phase filter that
 * starts from silence; the others turn no phase, and take a signal's ends for mirrors. Edges of the
 * unweighted bands are Butterworth's: order 3 at the low ones and where wow and flutter part at 6
 * Hz, order 10 at 200 Hz, so that the powers of wow and flutter add up to the whole at every
 * frequency.
 */
public enum FlutterBand {
    /** The weighting of IEC 60386, alike in AES6-2008 and DIN 45507. */
    WEIGHTED(f -> Decibels.toAmplitude(FlutterWeighting.atHz(f))),

    /** 0.2 Hz to 200 Hz without weighting. */
    UNWEIGHTED(f -> Math.sqrt(highPower(f, 0.2) * below200(f))),

    /** Wow, 0.2 Hz to 6 Hz. */
    WOW(f -> Math.sqrt(highPower(f, 0.2) * below200(f) * lowPower(f / 6, 3))),

    /** Flutter, 6 Hz to 200 Hz. */
    FLUTTER(f -> Math.sqrt(highPower(f, 0.2) * below200(f) * highPower(f, 6))),

    /**
     * 0.5 Hz to 200 Hz without weighting, read as rms in American practice (NAB). Common practice,
     * no source: the edges are from memory.
     */
    AMERICAN(f -> Math.sqrt(highPower(f, 0.5) * below200(f))),

    /** Everything up to 200 Hz, drift included: what a chart over time shows. */
    CHARTED(f -> Math.sqrt(below200(f)));

    private static final double HIGHEST_HZ = 200;

    private static final double WEIGHTING_SECONDS = 16;
    private static final double HALF_SECONDS = 10;
    private static final double TRANSFORM_SECONDS = 128;

    private final DoubleUnaryOperator gain;

    FlutterBand(DoubleUnaryOperator gain) {
        this.gain = gain;
    }

    /**
     * Gain at a frequency.
     *
     * @param frequencyHz frequency of the deviation, above 0
     */
    public double gain(double frequencyHz) {
        return gain.applyAsDouble(frequencyHz);
    }

    /**
     * Designs the filter, which costs more than a minute of use; each signal then starts its own.
     *
     * @param sampleRateHz values a second, 500 or more
     */
    Supplier<RunningFilter> design(double sampleRateHz) {
        int n = RateSizes.powerOfTwo(TRANSFORM_SECONDS, sampleRateHz);
        if (this == WEIGHTED) {
            int taps = (int) (WEIGHTING_SECONDS * sampleRateHz);
            return new BlockFilter(
                            MinimumPhase.impulseResponse(
                                    FlutterWeighting::atHz, sampleRateHz, n, taps))
                    ::start;
        }
        int half = (int) (HALF_SECONDS * sampleRateHz);
        BlockFilter filter = new BlockFilter(symmetric(sampleRateHz / n, n, half));
        return () -> new MirroredFilter(filter.startCentred(), half);
    }

    /** The response without phase, fading from half its reach on; nothing at 0 Hz stays nothing. */
    private double[] symmetric(double binHz, int n, int half) {
        double[] re = new double[n / 2 + 1];
        Arrays.setAll(re, k -> k == 0 ? (this == CHARTED ? 1 : 0) : gain(k * binHz));
        double[] whole = RealFft.ofSize(n).inverse(Spectrum.of(n, re, new double[re.length]));
        double[] fade = new double[2 * half + 1];
        double[] taps = new double[fade.length];
        double sum = 0;
        double weight = 0;
        for (int i = 0; i < taps.length; i++) {
            int away = Math.abs(i - half);
            fade[i] = fade((double) away / half);
            taps[i] = fade[i] * whole[away];
            sum += taps[i];
            weight += fade[i];
        }
        for (int i = 0; i < taps.length; i++) {
            taps[i] -= (sum - re[0]) * fade[i] / weight;
        }
        return taps;
    }

    private static double fade(double place) {
        return place < 0.5 ? 1 : 0.5 + 0.5 * Math.cos(2 * Math.PI * (place - 0.5));
    }

    private static double below200(double frequencyHz) {
        return lowPower(frequencyHz / HIGHEST_HZ, 10);
    }

    private static double highPower(double frequencyHz, double edgeHz) {
        return lowPower(edgeHz / frequencyHz, 3);
    }

    private static double lowPower(double ratio, int order) {
        return 1 / (1 + Math.pow(ratio, 2 * order));
    }
}
