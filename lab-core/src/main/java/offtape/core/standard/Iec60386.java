package offtape.core.standard;

import java.util.Arrays;

/**
 * Wow and flutter after IEC 60386:1972 with amendment 1 (1988), alike in AES6-2008 and DIN 45507:
 * the weighting, the quasi-peak reading, the two-sigma statistic, and the unweighted bands beside
 * them. Input is the speed deviation over time, its mean removed, in any unit (commonly percent);
 * results are in the same unit. Immutable; arguments are not modified.
 *
 * <p>Accuracy, from the tests: the realised weighting keeps within 0.01 dB of the table's curve
 * from 0.2 Hz to 200 Hz; a sine of 1 Hz to 150 Hz reads its weighted peak within 0.3 %, down to 0.5
 * Hz within 0.7 %; every pulse of the standard's table reads within its tolerance.
 *
 * <p>Cost, once warm: 50 ns a sample for the weighting, as much for the reading, 10 ms to make.
 */
public final class Iec60386 {

    /** Seconds at the start of a signal that readings leave out: filters and pointer settle. */
    public static final double SETTLING_SECONDS = 3;

    /** Seconds at the end of a signal that readings leave out: the detector looks ahead. */
    public static final double TRAILING_SECONDS = 1.5;

    private static final double LOWEST_RATE_HZ = 500;
    private static final double WEIGHTING_SECONDS = 16;
    private static final double TRANSFORM_SECONDS = 128;
    private static final double TWO_SIGMA_SHARE = 0.9545;

    private final double sampleRateHz;
    private final BlockFilter weighting;
    private final FlutterQuasiPeak detector;

    private Iec60386(double sampleRateHz) {
        this.sampleRateHz = sampleRateHz;
        int n = RateSizes.powerOfTwo(TRANSFORM_SECONDS, sampleRateHz);
        int taps = (int) (WEIGHTING_SECONDS * sampleRateHz);
        weighting =
                new BlockFilter(
                        MinimumPhase.impulseResponse(
                                FlutterWeighting::atHz, sampleRateHz, n, taps));
        detector = new FlutterQuasiPeak(sampleRateHz);
    }

    /**
     * The meter for deviations at a sample rate.
     *
     * @param sampleRateHz values a second, 500 or more, commonly 1000 to 2000
     * @throws IllegalArgumentException if the rate is lower: 200 Hz would not fit
     */
    public static Iec60386 atRate(double sampleRateHz) {
        if (!(sampleRateHz >= LOWEST_RATE_HZ)) {
            throw new IllegalArgumentException(
                    "wow and flutter needs 500 values a second or more, not " + sampleRateHz);
        }
        return new Iec60386(sampleRateHz);
    }

    /**
     * The weighting, dB re 4 Hz: exactly the table's values at its frequencies, a smooth curve
     * between them, 18 dB an octave below 0.1 Hz and -6 dB an octave above 200 Hz.
     *
     * @param frequencyHz frequency of the deviation, above 0
     */
    public static double weightingDb(double frequencyHz) {
        return FlutterWeighting.atHz(frequencyHz);
    }

    /** The weighted deviation, as long as the input; minimum phase, silent before the start. */
    public double[] weight(double[] deviation) {
        return weighting.apply(deviation);
    }

    /** The deviation from 0.2 Hz to 200 Hz without weighting, as long as the input. */
    public double[] unweighted(double[] deviation) {
        return FlutterBands.apply(FlutterBands::whole, deviation, sampleRateHz);
    }

    /** The deviation from 0.2 Hz to 6 Hz, as long as the input. */
    public double[] wow(double[] deviation) {
        return FlutterBands.apply(FlutterBands::wow, deviation, sampleRateHz);
    }

    /** The deviation from 6 Hz to 200 Hz, as long as the input. */
    public double[] flutter(double[] deviation) {
        return FlutterBands.apply(FlutterBands::flutter, deviation, sampleRateHz);
    }

    /** The quasi-peak reading over time of a weighted or unweighted deviation. */
    public double[] reading(double[] filtered) {
        return detector.reading(filtered);
    }

    /**
     * The highest quasi-peak reading of a weighted or unweighted deviation, where it has settled.
     *
     * @throws IllegalArgumentException if it is too short, see {@link #isLongEnough}
     */
    public double highestReading(double[] filtered) {
        return Arrays.stream(settled(reading(filtered))).max().orElseThrow();
    }

    /** Whether a signal of that many samples leaves at least half a second to read. */
    public boolean isLongEnough(int length) {
        return length >= (SETTLING_SECONDS + TRAILING_SECONDS + 0.5) * sampleRateHz;
    }

    /**
     * The part of a filtered deviation that statistics are taken from: without its first {@value
     * #SETTLING_SECONDS} s and its last {@value #TRAILING_SECONDS} s.
     *
     * @throws IllegalArgumentException if it is too short, see {@link #isLongEnough}
     */
    public double[] settled(double[] filtered) {
        if (!isLongEnough(filtered.length)) {
            throw new IllegalArgumentException(
                    "wow and flutter needs 5 s or more, not " + filtered.length / sampleRateHz);
        }
        int from = (int) Math.round(SETTLING_SECONDS * sampleRateHz);
        int trailing = (int) Math.round(TRAILING_SECONDS * sampleRateHz);
        return Arrays.copyOfRange(filtered, from, filtered.length - trailing);
    }

    /**
     * The two-sigma statistic (AES6-2008; amendment 1 of IEC 60386): the magnitude that is not
     * exceeded 95.45 % of the time.
     *
     * @param settled weighted deviation without its settling, at least one sample
     */
    public static double twoSigma(double[] settled) {
        double[] magnitudes = Arrays.stream(settled).map(Math::abs).sorted().toArray();
        double place = TWO_SIGMA_SHARE * (magnitudes.length - 1);
        int below = (int) place;
        int above = Math.min(below + 1, magnitudes.length - 1);
        return magnitudes[below] + (place - below) * (magnitudes[above] - magnitudes[below]);
    }
}
