package offtape.core.machine;

import offtape.core.machine.spec.SaturationSpec;

/**
 * The curve of a tape or an amplifier: odd part y and, for a second harmonic, even part c·y². Slope
 * 1 at zero.
 *
 * @param threePercentPeak peak of a sine whose third harmonic on the odd part is 3 %
 * @param odd the odd part
 * @param even the coefficient c, 0 for a symmetric tape
 */
record SaturationCurve(double threePercentPeak, OddCurve odd, double even) {

    /** No curve at all. */
    static final SaturationCurve STRAIGHT =
            new SaturationCurve(Double.POSITIVE_INFINITY, x -> x, 0);

    private static final double THREE_PERCENT = 0.03;

    /**
     * The curve of a description.
     *
     * @param shiftDb by how much the level of 3 % is higher than described
     * @param moreSecondPercent second harmonic that comes to the described one
     * @param referencePeak peak of a sine at reference level
     */
    static SaturationCurve of(
            SaturationSpec spec, double shiftDb, double moreSecondPercent, double referencePeak) {
        double levelDb = spec.levelAtK3ThreePercentDb() + shiftDb;
        double peak = referencePeak * Math.pow(10, levelDb / 20);
        OddCurve odd =
                switch (spec.kind()) {
                    case TANH -> TanhCurve.of(peak, THREE_PERCENT);
                    case CUBIC -> CubicCurve.of(peak, THREE_PERCENT);
                };
        double second = spec.secondHarmonicPercent() + moreSecondPercent;
        double even = even(odd, second, referencePeak);
        return new SaturationCurve(peak, odd, even);
    }

    /**
     * The curve with these harmonics of a sine at reference, where nothing else is known of it, as
     * of an amplifier. Towards overload it bends as a hyperbolic tangent and so limits, which a
     * cube would not.
     */
    static SaturationCurve ofHarmonics(
            double secondPercent, double thirdPercent, double referencePeak) {
        double third = thirdPercent / 100;
        OddCurve odd = third == 0 ? STRAIGHT.odd : TanhCurve.of(referencePeak, third);
        double peak =
                third == 0
                        ? STRAIGHT.threePercentPeak
                        : referencePeak * TanhCurve.drive(THREE_PERCENT) / TanhCurve.drive(third);
        return new SaturationCurve(peak, odd, even(odd, secondPercent, referencePeak));
    }

    // y² of an odd y has even components only, so it leaves the fundamental alone and the second
    // harmonic is c times its own.
    private static double even(OddCurve odd, double percent, double referencePeak) {
        if (percent == 0) {
            return 0;
        }
        double fundamental = Harmonics.of(odd::of, referencePeak).peak(1);
        double square = Harmonics.of(x -> odd.of(x) * odd.of(x), referencePeak).peak(2);
        return percent / 100 * fundamental / square;
    }

    double of(double x) {
        double y = odd.of(x);
        return y + even * y * y;
    }

    /** Whether the output has a constant part, which no replay head would hear. */
    boolean rectifies() {
        return even != 0;
    }
}
