package offtape.core.filter;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import offtape.core.dsp.RealFft;
import offtape.core.standard.MinimumPhase;
import offtape.core.unit.Decibels;

/**
 * Filters of minimum phase for a wanted gain, as short as a stated error allows. The filter is
 * judged as it will be written, in 32-bit float, and has a gain of 1 at 1 kHz.
 */
public final class FirDesign {

    /** The longest that is made. */
    public static final int MOST_TAPS = 1 << 17;

    /** Lowest sample rate, hertz: 1 kHz lies well within the band. */
    public static final int LOWEST_RATE_HZ = 8000;

    /** Highest sample rate, hertz: {@link #MOST_TAPS} still last a third of a second. */
    public static final int HIGHEST_RATE_HZ = 384_000;

    /** What the gain may err by, dB. */
    public static final double ERROR_DB = 0.05;

    /** From here up it keeps to that, hertz. */
    public static final double FROM_HZ = 30;

    private static final double HIGHEST_HZ = 20_000;

    /** Above this share of the rate the converter's own filter has its say. */
    private static final double HIGHEST_SHARE = 0.45;

    private static final int LEAST_TAPS = 256;
    private static final double TRANSFORM_SECONDS = 4;
    private static final double UNITY_HZ = 1000;
    private static final int FADED_PART = 4;

    private FirDesign() {}

    /** Up to where a filter of a rate is checked, hertz. */
    public static double highestHz(int sampleRateHz) {
        return Math.min(HIGHEST_HZ, HIGHEST_SHARE * sampleRateHz);
    }

    /**
     * The shortest filter of a power of two of taps whose error stays within {@link #ERROR_DB}, or
     * that of {@link #MOST_TAPS} if none does.
     *
     * @param gainDb wanted gain in dB at a frequency in hertz above 0; 0 dB at 1 kHz
     * @param sampleRateHz from {@link #LOWEST_RATE_HZ} to {@link #HIGHEST_RATE_HZ}
     * @throws IllegalArgumentException if the rate lies outside
     */
    public static FirFilter minimumPhase(DoubleUnaryOperator gainDb, int sampleRateHz) {
        if (sampleRateHz < LOWEST_RATE_HZ || sampleRateHz > HIGHEST_RATE_HZ) {
            throw new IllegalArgumentException("no filter is made for " + sampleRateHz + " Hz");
        }
        int n = RealFft.nextPowerOfTwo((int) (TRANSFORM_SECONDS * sampleRateHz));
        double[] whole = MinimumPhase.impulseResponse(gainDb, sampleRateHz, n, n);
        int taps = LEAST_TAPS;
        FirFilter filter = cut(whole, taps, sampleRateHz);
        while (taps < Math.min(MOST_TAPS, n) && !isGood(filter, gainDb)) {
            taps *= 2;
            filter = cut(whole, taps, sampleRateHz);
        }
        return filter;
    }

    private static boolean isGood(FirFilter filter, DoubleUnaryOperator gainDb) {
        double toHz = highestHz(filter.sampleRateHz());
        return filter.errorFrom(gainDb, FROM_HZ, toHz).worstDb() <= ERROR_DB;
    }

    private static FirFilter cut(double[] whole, int taps, int sampleRateHz) {
        double[] h = Arrays.copyOf(whole, taps);
        int fade = taps / FADED_PART;
        for (int j = 0; j < fade; j++) {
            h[taps - fade + j] *= 0.5 * (1 + Math.cos(Math.PI * (j + 0.5) / fade));
        }
        double unity = Decibels.toAmplitude(-new FirFilter(sampleRateHz, h).gainDb(UNITY_HZ));
        return new FirFilter(sampleRateHz, Arrays.stream(h).map(x -> x * unity).toArray())
                .asFloats();
    }
}
