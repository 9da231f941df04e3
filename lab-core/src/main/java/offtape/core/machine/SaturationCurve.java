package offtape.core.machine;

import offtape.core.machine.spec.SaturationSpec;

/**
 * The tape's curve: odd part y and, for a second harmonic, even part c·y². Slope 1 at zero.
 *
 * @param threePercentPeak peak of a sine whose third harmonic on the odd part is 3 %
 * @param odd the odd part
 * @param even the coefficient c, 0 for a symmetric tape
 */
record SaturationCurve(double threePercentPeak, OddCurve odd, double even) {

    private static final double THREE_PERCENT = 0.03;

    /** The curve of a description; {@code referencePeak} is that of a sine at reference level. */
    static SaturationCurve of(SaturationSpec spec, double referencePeak) {
        double peak = referencePeak * Math.pow(10, spec.levelAtK3ThreePercentDb() / 20);
        OddCurve odd =
                switch (spec.kind()) {
                    case TANH -> TanhCurve.of(peak, THREE_PERCENT);
                    case CUBIC -> CubicCurve.of(peak, THREE_PERCENT);
                };
        double even = even(odd, spec.secondHarmonicPercent(), referencePeak);
        return new SaturationCurve(peak, odd, even);
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

    void apply(double[] samples) {
        for (int i = 0; i < samples.length; i++) {
            samples[i] = of(samples[i]);
        }
    }

    Harmonics harmonics(double peak) {
        return Harmonics.of(this::of, peak);
    }
}
