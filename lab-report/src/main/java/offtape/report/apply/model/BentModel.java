package offtape.report.apply.model;

import java.util.function.DoubleUnaryOperator;
import offtape.core.model.Emphasis;
import offtape.core.model.TapeCurve;

/**
 * Curve and emphasis of one channel, and what they make of tones.
 *
 * @param curve the curve
 * @param emphasis the emphasis ahead of it
 */
record BentModel(TapeCurve curve, Emphasis emphasis) {

    /** The same with a second harmonic of the other sign. */
    BentModel turned() {
        return new BentModel(new TapeCurve(curve.bends(), curve.shares(), -curve.even()), emphasis);
    }

    /** Peak at the curve of a tone, re the reference's. */
    double peak(double frequencyHz, double levelDb) {
        return Math.pow(10, levelDb / 20) * emphasis.gain(frequencyHz);
    }

    /** Gain of a tone's fundamental re that of a small one, dB, 0 or less. */
    double gainDb(double frequencyHz, double levelDb) {
        return 20 * Math.log10(curve.ratios(peak(frequencyHz, levelDb))[0]);
    }

    /**
     * The third harmonic of a tone re its fundamental in the return, a ratio.
     *
     * @param levels the machine's response, dB at a frequency
     */
    double third(double frequencyHz, double levelDb, DoubleUnaryOperator levels) {
        double[] ratios = curve.ratios(peak(frequencyHz, levelDb));
        return Math.abs(ratios[1]) / ratios[0] * behind(3, frequencyHz, emphasis, levels);
    }

    /** How much stronger a harmonic gets behind the curve than its fundamental, a ratio. */
    static double behind(
            int order, double frequencyHz, Emphasis emphasis, DoubleUnaryOperator levels) {
        double db = levels.applyAsDouble(order * frequencyHz) - levels.applyAsDouble(frequencyHz);
        return Math.pow(10, db / 20)
                * emphasis.gain(frequencyHz)
                / emphasis.gain(order * frequencyHz);
    }
}
