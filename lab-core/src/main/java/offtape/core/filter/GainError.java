package offtape.core.filter;

import java.util.function.DoubleUnaryOperator;
import offtape.core.dsp.Spectrum;
import offtape.core.unit.Decibels;

/**
 * How far a filter's gain lies from a wanted one, every octave counting alike.
 *
 * @param worstDb the largest difference, dB
 * @param worstHz where that is
 * @param rmsDb root mean square over the logarithm of frequency, dB
 * @param fromHz lowest frequency looked at
 * @param toHz highest frequency looked at
 */
public record GainError(double worstDb, double worstHz, double rmsDb, double fromHz, double toHz) {

    /** Points looked at in an octave. */
    private static final int PER_OCTAVE = 48;

    static GainError of(
            Spectrum spectrum,
            double sampleRateHz,
            DoubleUnaryOperator wantedDb,
            double fromHz,
            double toHz) {
        double worst = 0;
        double worstHz = fromHz;
        double squares = 0;
        int points = 1 + (int) Math.ceil(PER_OCTAVE * Math.log(toHz / fromHz) / Math.log(2));
        for (int i = 0; i < points; i++) {
            double near = fromHz * Math.pow(toHz / fromHz, i / Math.max(1.0, points - 1.0));
            int bin = (int) Math.round(near / spectrum.binHz(sampleRateHz));
            double hz = Math.max(1, bin) * spectrum.binHz(sampleRateHz);
            double error = Decibels.ofPower(spectrum.power(Math.max(1, bin)));
            error -= wantedDb.applyAsDouble(hz);
            squares += error * error;
            if (Math.abs(error) > worst) {
                worst = Math.abs(error);
                worstHz = hz;
            }
        }
        return new GainError(worst, worstHz, Math.sqrt(squares / points), fromHz, toHz);
    }
}
