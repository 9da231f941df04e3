package offtape.report.measure.sweep;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import offtape.core.dsp.Baseband;
import offtape.core.programme.Cue;
import offtape.report.measure.tone.Complex;

/** Followed sweeps whose channels come back turned by a formula. */
public final class TurnedSweep {

    private TurnedSweep() {}

    /**
     * Bands of a forty-eighth of an octave around 1 kHz, each with one value.
     *
     * @param lowest number of the first band
     * @param bands how many
     * @param radians phase of each channel over frequency; NaN where nothing is heard
     */
    public static FollowedSweep of(
            Cue.Sweep cue, int lowest, int bands, DoubleUnaryOperator... radians) {
        FollowedSweep sweep = new FollowedSweep(cue, lowest, bands, radians.length, 0.05);
        for (int b = lowest; b < lowest + bands; b++) {
            List<Baseband> heard = new ArrayList<>();
            for (DoubleUnaryOperator phase : radians) {
                double turn = phase.applyAsDouble(SweepFollower.bandHz(b));
                heard.add(pointer(Double.isNaN(turn) ? Complex.ZERO : Complex.polar(1, turn)));
            }
            sweep.addReturn(b, heard, 0, 20);
            sweep.addProgramme(b, pointer(new Complex(1, 0)), 0);
        }
        return sweep;
    }

    private static Baseband pointer(Complex z) {
        return new Baseband(new double[] {z.re()}, new double[] {z.im()}, 100, 0);
    }
}
