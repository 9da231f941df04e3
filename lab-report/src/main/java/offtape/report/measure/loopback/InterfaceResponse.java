package offtape.report.measure.loopback;

import java.util.Arrays;
import java.util.function.IntToDoubleFunction;
import offtape.report.measure.tone.Complex;
import offtape.report.result.InterfaceFigures;

/**
 * The complex response of one channel of the interface. Between points magnitude in decibels and
 * phase run straight over the logarithm of frequency.
 */
public final class InterfaceResponse {

    /** Where the interface itself lets through less, dB re 1 kHz, nothing is told through it. */
    private static final double LEAST_DB = -20;

    private final InterfaceFigures.Curve curve;
    private final double[] logHz;

    InterfaceResponse(InterfaceFigures.Curve curve) {
        this.curve = curve;
        this.logHz = Arrays.stream(curve.frequencyHz()).map(Math::log).toArray();
    }

    /** Whether a frequency can be told through the interface. */
    public boolean passes(double hz) {
        double slack = 1e-6;
        boolean inside =
                Math.log(hz) > logHz[0] - slack && Math.log(hz) < logHz[logHz.length - 1] + slack;
        return inside && levelDb(hz) > LEAST_DB;
    }

    /** Magnitude at a frequency, dB re 1 kHz. */
    public double levelDb(double hz) {
        return at(hz, i -> curve.magnitudeDb()[i]);
    }

    /** Expanded uncertainty (k = 2) of that, dB. */
    public double uncertaintyDb(double hz) {
        return at(hz, i -> curve.uncertaintyDb()[i]);
    }

    /** The response as a complex number. */
    public Complex at(double hz) {
        return Complex.polar(
                Math.pow(10, levelDb(hz) / 20),
                Math.toRadians(at(hz, i -> curve.phaseDegrees()[i])));
    }

    private double at(double hz, IntToDoubleFunction value) {
        double place = Math.log(hz);
        int found = Arrays.binarySearch(logHz, place);
        int left = Math.max(0, Math.min(logHz.length - 2, found >= 0 ? found : -found - 2));
        double part = (place - logHz[left]) / (logHz[left + 1] - logHz[left]);
        double inside = Math.max(0, Math.min(1, part));
        double from = value.applyAsDouble(left);
        return from + inside * (value.applyAsDouble(left + 1) - from);
    }
}
