package offtape.report.measure.sweep;

import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.measure.loopback.KnownInterface;
import offtape.report.result.HarmonicCurve;
import offtape.report.result.InterfaceFigures;
import offtape.report.result.LoopbackSession;
import offtape.report.result.LoopbackUse;

/** Interfaces known from a loopback, made by hand. */
final class Interfaces {

    private static final Quantity NO = Quantity.unknown("This was not measured.");

    private Interfaces() {}

    static KnownInterface of(InterfaceFigures.Channel... channels) {
        return KnownInterface.of(
                new LoopbackSession(
                        "results.json",
                        WrittenSweep.RATE,
                        "digest",
                        new LoopbackUse("2020-01-01T00:00:00Z", "digest"),
                        new InterfaceFigures(NO, null, NO, NO, NO, List.of(channels))));
    }

    static InterfaceFigures.Channel channel(
            String name, InterfaceFigures.Curve curve, HarmonicCurve... harmonics) {
        return new InterfaceFigures.Channel(
                name, -18.0, NO, curve, NO, NO, NO, null, List.of(), List.of(), List.of(harmonics));
    }

    /** The same level and phase from 1 Hz to 100 kHz. */
    static InterfaceFigures.Curve level(double db, double degrees) {
        return curve(new double[] {1, 1e5}, new double[] {db, db}, new double[] {degrees, degrees});
    }

    /** A curve of 0.03 dB of uncertainty. */
    static InterfaceFigures.Curve curve(double[] hz, double[] db, double[] degrees) {
        double[] uncertainty = new double[hz.length];
        java.util.Arrays.fill(uncertainty, 0.03);
        return new InterfaceFigures.Curve(hz, db, degrees, uncertainty);
    }
}
