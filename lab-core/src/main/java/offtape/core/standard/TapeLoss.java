package offtape.core.standard;

import offtape.core.unit.Decibels;

/**
 * Losses between tape and replay head, in dB, 0 or less. Lengths are in one common unit, here
 * micrometres; only their ratio to the recorded wavelength matters.
 *
 * <p>Spacing and thickness: R. L. Wallace, The reproduction of magnetically recorded signals, Bell
 * System Technical Journal 30 (1951), 1145-1173. Gap and azimuth: sin(x)/x of a uniform aperture;
 * at its nulls, whole multiples of the wavelength, the loss is unbounded and negative infinity (or
 * a very large loss) is returned.
 */
public final class TapeLoss {

    /** Effective over optical gap length, customary for a gap with straight edges. */
    public static final double EFFECTIVE_GAP_FACTOR = 1.11;

    private TapeLoss() {}

    /**
     * Recorded wavelength in micrometres.
     *
     * @param speedMmPerS tape speed, mm/s
     * @param frequencyHz frequency, above 0
     */
    public static double wavelengthUm(double speedMmPerS, double frequencyHz) {
        return 1000 * speedMmPerS / frequencyHz;
    }

    /**
     * Loss of a space between tape and head: 54.6 dB for each wavelength, exactly 40π / ln 10.
     *
     * @param spacingUm distance, 0 or more
     * @param wavelengthUm recorded wavelength, above 0
     */
    public static double spacingDb(double spacingUm, double wavelengthUm) {
        return -40 * Math.PI / Math.log(10) * spacingUm / wavelengthUm;
    }

    /**
     * Loss of a head gap.
     *
     * @param effectiveGapUm effective gap length: the optical one times {@link
     *     #EFFECTIVE_GAP_FACTOR}, 0 or more
     * @param wavelengthUm recorded wavelength, above 0
     */
    public static double gapDb(double effectiveGapUm, double wavelengthUm) {
        return apertureDb(effectiveGapUm / wavelengthUm);
    }

    /**
     * Loss of a magnetised layer of finite thickness: (1 − exp(−kδ)) / kδ with k = 2π/λ.
     *
     * @param thicknessUm depth of recording, 0 or more
     * @param wavelengthUm recorded wavelength, above 0
     */
    public static double thicknessDb(double thicknessUm, double wavelengthUm) {
        double depth = 2 * Math.PI * thicknessUm / wavelengthUm;
        return depth == 0 ? 0 : Decibels.ofAmplitude(-Math.expm1(-depth) / depth);
    }

    /**
     * Loss of a track read at an angle.
     *
     * @param trackWidthUm width of the track, 0 or more
     * @param arcMinutes angle between recorded and reading gap, of either sign
     * @param wavelengthUm recorded wavelength, above 0
     */
    public static double azimuthDb(double trackWidthUm, double arcMinutes, double wavelengthUm) {
        double across = trackWidthUm * Math.tan(Math.toRadians(arcMinutes / 60));
        return apertureDb(across / wavelengthUm);
    }

    private static double apertureDb(double wavelengths) {
        double x = Math.PI * Math.abs(wavelengths);
        return x == 0 ? 0 : Decibels.ofAmplitude(Math.abs(Math.sin(x) / x));
    }
}
