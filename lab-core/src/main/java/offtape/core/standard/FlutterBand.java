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
    WEIGHTED(
            f -> Decibels.toAmplitude(FlutterWeighting.atHz(f)),
            f -> Decibels.toAmplitude(FlutterWeighting.straightAtHz(f)),
            f -> Decibels.toAmplitude(FlutterWeighting.straightAtHz(f))),

    /** 0.2 Hz to 200 Hz without weighting. */
    UNWEIGHTED(0.2, 200),

    /** Wow, 0.2 Hz to 6 Hz. */
    WOW(
            f -> Math.sqrt(high(f, 0.2, 3) * low(f, 200, 10) * low(f, 6, 3)),
            f -> within(f, 0.2, 6),
            f -> Math.sqrt(high(f, 0.2, 2) * low(f, 6, 2))),

    /** Flutter, 6 Hz to 200 Hz. */
    FLUTTER(
            f -> Math.sqrt(high(f, 0.2, 3) * low(f, 200, 10) * high(f, 6, 3)),
            f -> within(f, 6, 200),
            f -> Math.sqrt(low(f, 200, 6) * high(f, 6, 2))),

    /**
     * 0.5 Hz to 200 Hz without weighting, read as rms in American practice (NAB). Common practice,
     * no source: the edges are from memory.
     */
    AMERICAN(0.5, 200),

    /** Everything up to 200 Hz, drift included: what a chart over time shows. */
    CHARTED(
            f -> Math.sqrt(low(f, 200, 10)),
            f -> within(f, 0, 200),
            f -> Math.sqrt(low(f, 200, 6)));

    private static final double WEIGHTING_SECONDS = 16;
    private static final double HALF_SECONDS = 10;
    private static final double TRANSFORM_SECONDS = 128;

    private final DoubleUnaryOperator gain;
    private final DoubleUnaryOperator sharpGain;
    private final DoubleUnaryOperator bluntGain;

    FlutterBand(
            DoubleUnaryOperator gain,
            DoubleUnaryOperator sharpGain,
            DoubleUnaryOperator bluntGain) {
        this.gain = gain;
        this.sharpGain = sharpGain;
        this.bluntGain = bluntGain;
    }

    FlutterBand(double fromHz, double toHz) {
        this(
                f -> Math.sqrt(high(f, fromHz, 3) * low(f, toHz, 10)),
                f -> within(f, fromHz, toHz),
                f -> Math.sqrt(high(f, fromHz, 2) * low(f, toHz, 6)));
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
     * Gain as another meter may have it that keeps to the same standard or practice: straight lines
     * between the rows of the weighting's table, edges as sharp as can be.
     *
     * @param frequencyHz frequency of the deviation, above 0
     */
    public double sharpGain(double frequencyHz) {
        return sharpGain.applyAsDouble(frequencyHz);
    }

    /**
     * The same with edges blunter than ours.
     *
     * @param frequencyHz frequency of the deviation, above 0
     */
    public double bluntGain(double frequencyHz) {
        return bluntGain.applyAsDouble(frequencyHz);
    }

    /** A frequency well between the ends of the band, hertz. */
    public double middleHz() {
        return switch (this) {
            case WOW -> 1.1;
            case FLUTTER -> 35;
            default -> 6.3;
        };
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

    private static double within(double frequencyHz, double fromHz, double toHz) {
        return frequencyHz >= fromHz && frequencyHz <= toHz ? 1 : 0;
    }

    private static double high(double frequencyHz, double edgeHz, int order) {
        return low(edgeHz, frequencyHz, order);
    }

    private static double low(double frequencyHz, double edgeHz, int order) {
        return 1 / (1 + Math.pow(frequencyHz / edgeHz, 2 * order));
    }
}
