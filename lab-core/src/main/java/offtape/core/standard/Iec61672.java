package offtape.core.standard;

import offtape.core.unit.Decibels;

/**
 * Frequency weightings A and C of IEC 61672-1:2013, from the pole frequencies of its Annex E; 0 dB
 * at 1 kHz. Within 0.05 dB of Table 3 at the exact frequencies, which is the rounding of the table.
 */
public final class Iec61672 {

    private static final double F1_HZ = 20.598997;
    private static final double F2_HZ = 107.65265;
    private static final double F3_HZ = 737.86223;
    private static final double F4_HZ = 12194.217;
    private static final double REFERENCE_HZ = 1000;

    private Iec61672() {}

    /** Weighting A in dB at a frequency in hertz above 0. */
    public static double aWeightingDb(double frequencyHz) {
        return Decibels.ofPower(aPower(frequencyHz) / aPower(REFERENCE_HZ));
    }

    /** Weighting C in dB at a frequency in hertz above 0. */
    public static double cWeightingDb(double frequencyHz) {
        return Decibels.ofPower(cPower(frequencyHz) / cPower(REFERENCE_HZ));
    }

    private static double cPower(double f) {
        double f2 = f * f;
        double amplitude = f2 / ((f2 + F1_HZ * F1_HZ) * (f2 + F4_HZ * F4_HZ));
        return amplitude * amplitude;
    }

    private static double aPower(double f) {
        double f2 = f * f;
        return cPower(f) * f2 * f2 / ((f2 + F2_HZ * F2_HZ) * (f2 + F3_HZ * F3_HZ));
    }
}
