package offtape.core.standard;

import java.util.Arrays;
import java.util.stream.IntStream;
import offtape.core.unit.Decibels;
import offtape.reference.ReferenceTable;

/**
 * Noise weighting and quasi-peak meter of Rec. ITU-R BS.468-4. Readings are on the scale on which a
 * steady sine of 1 kHz reads its root mean square. Immutable; arguments are not modified.
 *
 * <p>Accuracy, from the tests: the weighting keeps within 0.06 dB of Table 1 and its realisation
 * within 0.001 dB of it up to 20 kHz at 44.1 kHz to 192 kHz; single and repeated bursts read within
 * a quarter of their tolerances. A steady tone that is a small whole fraction of the sample rate
 * may read 0.3 dB off, as its rectified samples always fall on the same phases; noise is not
 * affected.
 */
public final class ItuBs468 {

    /** Seconds until the pointer has settled on steady noise. */
    public static final double SETTLING_SECONDS = 1;

    /** The least sample rate at which the weighting can be followed, hertz. */
    public static final double LOWEST_RATE_HZ = 44100;

    private static final double TRANSFORM_SECONDS = 0.5;
    private static final double RESPONSE_SECONDS = 0.1;
    private static final double CALIBRATION_SECONDS = 3;
    private static final double CALIBRATION_HZ = 1000;

    /** Roots of the network of Fig. 1a: a zero at 0 Hz, poles, and pole pairs, in rad/s. */
    private static final ReferenceTable ROOTS = ReferenceTable.load("bs468-analytic");

    private static final double GAIN_AT_1_KHZ_DB = networkDb(CALIBRATION_HZ);

    private final BlockFilter weighting;
    private final BurstQuasiPeak detector;
    private final double sampleRateHz;
    private final double perPointer;

    private ItuBs468(double sampleRateHz) {
        this.sampleRateHz = sampleRateHz;
        int n = RateSizes.powerOfTwo(TRANSFORM_SECONDS, sampleRateHz);
        int taps = (int) (RESPONSE_SECONDS * sampleRateHz);
        weighting =
                new BlockFilter(
                        MinimumPhase.impulseResponse(ItuBs468::weightingDb, sampleRateHz, n, taps));
        detector = new BurstQuasiPeak(sampleRateHz);
        perPointer = Math.sqrt(0.5) / pointerOfUnitSine();
    }

    /**
     * The meter for sound at a sample rate.
     *
     * @param sampleRateHz frames a second, 44100 or more
     * @throws IllegalArgumentException if the rate is lower: 20 kHz would not fit
     */
    public static ItuBs468 atRate(double sampleRateHz) {
        if (!(sampleRateHz >= LOWEST_RATE_HZ)) {
            throw new IllegalArgumentException(
                    "BS.468 needs 44100 frames a second or more, not " + sampleRateHz);
        }
        return new ItuBs468(sampleRateHz);
    }

    /** The weighting, dB re 1 kHz, at a frequency in hertz above 0. */
    public static double weightingDb(double frequencyHz) {
        return networkDb(frequencyHz) - GAIN_AT_1_KHZ_DB;
    }

    /** The weighted signal, as long as the input; minimum phase, silent before the start. */
    public double[] weight(double[] samples) {
        return weighting.apply(samples);
    }

    /** The reading at each sample: weighted, quasi-peak, as the root mean square of a sine. */
    public double[] reading(double[] samples) {
        double[] reading = weight(samples);
        detector.follow(reading);
        for (int i = 0; i < reading.length; i++) {
            reading[i] *= perPointer;
        }
        return reading;
    }

    /**
     * The reading of steady noise: the mean of where the pointer stands after settling.
     *
     * @param samples noise lasting more than {@link #SETTLING_SECONDS}
     * @throws IllegalArgumentException if it is shorter
     */
    public double quasiPeak(double[] samples) {
        int from = (int) Math.round(SETTLING_SECONDS * sampleRateHz);
        if (samples.length <= from) {
            throw new IllegalArgumentException("a quasi-peak reading of noise needs more than 1 s");
        }
        return Arrays.stream(reading(samples), from, samples.length).average().orElseThrow();
    }

    private double pointerOfUnitSine() {
        double step = 2 * Math.PI * CALIBRATION_HZ / sampleRateHz;
        double[] sine =
                IntStream.range(0, (int) (CALIBRATION_SECONDS * sampleRateHz))
                        .mapToDouble(i -> Math.sin(step * i))
                        .toArray();
        detector.follow(sine);
        return sine[sine.length - 1];
    }

    private static double networkDb(double frequencyHz) {
        double w = 2 * Math.PI * frequencyHz;
        double power = 1;
        for (int row = 0; row < ROOTS.size(); row++) {
            double real = ROOTS.number(row, "real");
            double imaginary = ROOTS.number(row, "imaginary");
            power *= rootPower(ROOTS.text(row, "root"), w, real, imaginary);
        }
        return Decibels.ofPower(power);
    }

    private static double rootPower(String root, double w, double real, double imaginary) {
        double above = real * real + (w + imaginary) * (w + imaginary);
        double below = real * real + (w - imaginary) * (w - imaginary);
        return switch (root) {
            case "zero" -> above;
            case "pole" -> 1 / above;
            case "pole pair" -> 1 / (above * below);
            default -> throw new IllegalArgumentException("unknown root: " + root);
        };
    }
}
