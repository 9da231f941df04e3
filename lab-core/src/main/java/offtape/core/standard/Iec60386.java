package offtape.core.standard;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;

/**
 * Wow and flutter after IEC 60386:1972 with amendment 1 (1988), alike in AES6-2008 and DIN 45507:
 * the weighting ({@link FlutterBand#WEIGHTED}), the quasi-peak reading, the two-sigma statistic
 * ({@link TwoSigma}). Input is the speed deviation over time, about its mean, in any unit (commonly
 * percent); results are in the same unit. May be shared; arguments are not modified.
 *
 * <p>Accuracy, from the tests: the realised weighting keeps within 0.01 dB of the table's curve
 * from 0.2 Hz to 200 Hz; a sine of 1 Hz to 150 Hz reads its weighted peak within 0.3 %, down to 0.5
 * Hz within 0.7 %; every pulse of the standard's table reads within its tolerance.
 *
 * <p>Cost, once warm: about 70 ns a sample for the weighting, as much for the reading.
 */
public final class Iec60386 {

    /** Seconds at the start of a signal that readings leave out: filters and pointer settle. */
    public static final double SETTLING_SECONDS = 3;

    /** Seconds at the end of a signal that readings leave out: the detector looks ahead. */
    public static final double TRAILING_SECONDS = 1.5;

    private static final double LOWEST_RATE_HZ = 500;

    private final double sampleRateHz;
    private final FlutterQuasiPeak detector;

    /** What was designed so far: each band once, however many signals are read. */
    private final Map<FlutterBand, Supplier<RunningFilter>> designs = new ConcurrentHashMap<>();

    private Iec60386(double sampleRateHz) {
        this.sampleRateHz = sampleRateHz;
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

    /** Values a second. */
    public double sampleRateHz() {
        return sampleRateHz;
    }

    /**
     * The place of a frequency among the rows of the weighting's table, from 0 at the first one:
     * between the rows as a share of the way over the logarithm of frequency, at the end rows
     * beyond them. A row is rounded to a tenth of a decibel.
     *
     * @param frequencyHz frequency of the deviation, above 0
     */
    public static double weightingRow(double frequencyHz) {
        return FlutterWeighting.place(frequencyHz);
    }

    /** Number of rows of the weighting's table. */
    public static int weightingRows() {
        return FlutterWeighting.rows();
    }

    /** Starts a band for one deviation. */
    public RunningFilter band(FlutterBand band) {
        return designs.computeIfAbsent(band, b -> b.design(sampleRateHz)).get();
    }

    /** Starts the quasi-peak reading over time of a weighted or unweighted deviation. */
    public RunningFilter quasiPeak() {
        return detector.start();
    }

    /** The same with the slowest detector that keeps to the standard, to see how far two differ. */
    public RunningFilter slowestQuasiPeak() {
        return FlutterQuasiPeak.slowest(sampleRateHz).start();
    }

    /** The same with the quickest one. */
    public RunningFilter quickestQuasiPeak() {
        return FlutterQuasiPeak.quickest(sampleRateHz).start();
    }

    /** Starts leaving out what has not settled, of a band or of a reading. */
    public Settled settled() {
        return new Settled(sampleRateHz);
    }

    /** Whether a signal of that many samples leaves at least half a second to read. */
    public boolean isLongEnough(long length) {
        return length >= (SETTLING_SECONDS + TRAILING_SECONDS + 0.5) * sampleRateHz;
    }
}
