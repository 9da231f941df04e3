package offtape.report.measure.sweep;

import java.util.List;
import java.util.stream.DoubleStream;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.result.ResponseBand;

/** Edges of a response, and the widest bands around 1 kHz within which it stays. */
final class BandMeasure {

    private static final Sentences SAID = Sentences.near(BandMeasure.class);

    private static final double EDGE_DB = -3;
    private static final double[] TOLERANCES_DB = {1, 2, 3};

    private BandMeasure() {}

    /** The first frequency in a direction at which the response has fallen by 3 dB. */
    static Quantity edge(ResponseCurve curve, int direction) {
        return curve.crossing(
                direction,
                i -> EDGE_DB - curve.db()[i],
                SAID.say("no-edge", curve.endHz(direction)));
    }

    /** The bands within ±1, ±2 and ±3 dB. */
    static List<ResponseBand> bands(ResponseCurve curve) {
        return DoubleStream.of(TOLERANCES_DB).mapToObj(t -> band(curve, t)).toList();
    }

    private static ResponseBand band(ResponseCurve curve, double toleranceDb) {
        Quantity lower = end(curve, toleranceDb, -1);
        Quantity upper = end(curve, toleranceDb, 1);
        return new ResponseBand(
                toleranceDb,
                lower.isKnown() ? lower.value() : curve.endHz(-1),
                upper.isKnown() ? upper.value() : curve.endHz(1),
                lower,
                upper);
    }

    private static Quantity end(ResponseCurve curve, double toleranceDb, int direction) {
        return curve.crossing(
                direction,
                i -> Math.abs(curve.db()[i]) - toleranceDb,
                SAID.say("within", toleranceDb, curve.endHz(direction)));
    }
}
