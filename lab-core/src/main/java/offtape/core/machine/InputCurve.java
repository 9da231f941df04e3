package offtape.core.machine;

import offtape.core.machine.spec.RecorderSpec;

/**
 * The bent characteristic of an interface's input, y = x + a·x² + b·x³. A sine of peak A comes out
 * with a·A²/2 of its second harmonic and b·A³/4 of its third. What lies beyond half the sample rate
 * is mirrored, since nothing filters it.
 */
record InputCurve(double square, double cube) {

    static InputCurve of(RecorderSpec spec, double referencePeak) {
        return new InputCurve(
                2 * spec.secondHarmonicPercent() / 100 / referencePeak,
                4 * spec.thirdHarmonicPercent() / 100 / (referencePeak * referencePeak));
    }

    double at(double x) {
        return x + x * x * (square + cube * x);
    }

    /** Peak of a harmonic that a sine gets here; 0 above the third. */
    double peak(int harmonic, double peak) {
        return switch (harmonic) {
            case 1 -> peak + 0.75 * cube * peak * peak * peak;
            case 2 -> square * peak * peak / 2;
            case 3 -> cube * peak * peak * peak / 4;
            default -> 0;
        };
    }
}
