package offtape.core.standard;

import java.util.stream.IntStream;

/**
 * Fractional-octave bands on the base-ten system of IEC 61260-1: an octave is the ratio G =
 * 10^(3/10), and 1 kHz is the reference.
 *
 * <p>Centres here are 1000·G^(n/b) Hz for every b, so that 1 kHz is always one of them. For even b
 * the standard sets its centres half a step aside, with 1 kHz on an edge.
 */
public final class Iec61260 {

    private static final double REFERENCE_HZ = 1000;
    private static final double OCTAVE_EXPONENT = 0.3;

    /** Share of a step by which rounding may move a centre across an end of the range. */
    private static final double ROUNDING_STEPS = 1e-9;

    private Iec61260() {}

    /**
     * The centres from {@code lowHz} to {@code highHz}, both included, rising.
     *
     * @param fractionDenominator bands an octave: 1 octaves, 3 third octaves, 12 twelfths
     * @throws IllegalArgumentException unless 0 &lt; low &lt;= high and there is a band an octave
     */
    public static double[] bandCentresHz(double lowHz, double highHz, int fractionDenominator) {
        if (!(lowHz > 0) || !(highHz >= lowHz) || fractionDenominator < 1) {
            throw new IllegalArgumentException(
                    "no bands from " + lowHz + " Hz to " + highHz + " Hz");
        }
        int first = (int) Math.ceil(steps(lowHz, fractionDenominator) - ROUNDING_STEPS);
        int last = (int) Math.floor(steps(highHz, fractionDenominator) + ROUNDING_STEPS);
        return IntStream.rangeClosed(first, last)
                .mapToDouble(n -> REFERENCE_HZ * ratio(n, fractionDenominator))
                .toArray();
    }

    /** Lower edge of the band about a centre, hertz. */
    public static double lowerEdgeHz(double centreHz, int fractionDenominator) {
        return centreHz * ratio(-0.5, fractionDenominator);
    }

    /** Upper edge of the band about a centre, hertz. */
    public static double upperEdgeHz(double centreHz, int fractionDenominator) {
        return centreHz * ratio(0.5, fractionDenominator);
    }

    private static double ratio(double steps, int fractionDenominator) {
        return Math.pow(10, OCTAVE_EXPONENT * steps / fractionDenominator);
    }

    private static double steps(double hz, int fractionDenominator) {
        return fractionDenominator * Math.log10(hz / REFERENCE_HZ) / OCTAVE_EXPONENT;
    }
}
