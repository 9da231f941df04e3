package offtape.report.measure.sweep;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.function.IntToDoubleFunction;
import offtape.core.unit.Quantity;
import offtape.report.measure.loopback.InterfaceResponse;
import offtape.report.result.InterfaceFigures;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ResponseCurveTest {

    private static final double[] HZ = {125, 250, 500, 1000, 2000, 4000, 8000};

    private static ResponseCurve curve(double... db) {
        double[] uncertainty = new double[db.length];
        return new ResponseCurve(HZ, db, uncertainty);
    }

    private static IntToDoubleFunction below(ResponseCurve curve, double db) {
        return i -> db - curve.db()[i];
    }

    /** 1.5 dB of 3 dB an octave: half an octave beyond the last point inside. */
    @Test
    void aCrossingLiesStraightBetweenPoints() {
        ResponseCurve curve = curve(-9, -6, -3, 0, -3, -6, -9);
        assertEquals(4000 * Math.sqrt(2), curve.crossingHz(1, below(curve, -7.5)), 1e-9);
        assertEquals(250 / Math.sqrt(2), curve.crossingHz(-1, below(curve, -7.5)), 1e-9);
        assertEquals(1000, curve.crossingHz(1, below(curve, 0.1)), 1e-9, "outside at once");
        assertEquals(Double.NaN, curve.crossingHz(1, below(curve, -9)), "reached, not left");
        assertEquals(Double.NaN, curve.crossingHz(-1, below(curve, -9)));
        ResponseCurve rising = curve(0, 0, 0, 0, 3, 6, 9);
        assertEquals(Double.NaN, rising.crossingHz(1, below(rising, 0)), "at the limit at 1 kHz");
        assertEquals(8000, curve.crossingHz(1, below(curve, -8.9999999)), 1e-3);
        assertEquals(125, curve.crossingHz(-1, below(curve, -8.9999999)), 1e-3);
        // touched at 4 kHz and left from there
        assertEquals(4000, curve.crossingHz(1, below(curve, -6)), 1e-9);
    }

    /** Down to −2 dB at 2 kHz, up again, and down for good: the first time counts. */
    @Test
    void theFirstCrossingCounts() {
        ResponseCurve curve = curve(0, 0, 0, 0, -2, 0, -8);
        assertEquals(1000 * Math.sqrt(2), curve.crossingHz(1, below(curve, -1)), 1e-9);
    }

    @ParameterizedTest
    @CsvSource({"1, 0", "187, 0", "188, 1", "1000, 3", "1499, 3", "1500, 3", "1501, 4", "1e5, 6"})
    void theNearestPointIsThatInHertz(double hz, int expected) {
        assertEquals(expected, curve(new double[7]).nearest(hz));
    }

    @Test
    void theEndsAreThoseOfTheCurve() {
        assertEquals(125, curve(new double[7]).endHz(-1));
        assertEquals(8000, curve(new double[7]).endHz(1));
        assertEquals(7, curve(new double[7]).size());
    }

    /**
     * A straight fall of 3 dB an octave does not bend, so that 0.3 dB of uncertainty move −4.5 dB
     * by a tenth of an octave: 2828.4 · (2^0.1 − 1) = 203.0 Hz upwards, which is more than
     * downwards; in the bass 353.6 · (1 − 2^−0.1) = 23.7 Hz downwards but 353.6 · (2^0.1 − 1) =
     * 25.4 Hz upwards.
     */
    @Test
    void aCrossingMovesByTheUncertaintyOfItsCurve() {
        double[] db = {-9, -6, -3, 0, -3, -6, -9};
        double[] u = {0.3, 0.3, 0.3, 0.3, 0.3, 0.3, 0.3};
        ResponseCurve curve = new ResponseCurve(HZ, db, u);
        Quantity upper = curve.crossing(1, below(curve, -4.5), "never");
        assertEquals(2828.4, upper.value(), 0.05);
        assertEquals("Hz", upper.unit());
        assertEquals(203.0, upper.uncertainty(), 0.1);
        Quantity lower = curve.crossing(-1, below(curve, -4.5), "never");
        assertEquals(25.4, lower.uncertainty(), 0.1);
    }

    /**
     * Without uncertainty of its points a corner is as uncertain as it bends: −8 dB at 2 kHz after
     * 0 dB at 500 Hz and 1 kHz and before −8 dB bends by −8 dB at 1 kHz, +8 dB at 2 kHz, an eighth
     * of which is 1 dB at either. −4 dB lies in the middle; moved by 1 dB it lies an eighth of an
     * octave beside: 1414.2 · (2^0.125 − 1) = 128.0 Hz.
     */
    @Test
    void aCornerIsAsUncertainAsItBends() {
        ResponseCurve curve = curve(0, 0, 0, 0, -8, -8, -8);
        Quantity upper = curve.crossing(1, below(curve, -4), "never");
        assertEquals(1414.2, upper.value(), 0.05);
        assertEquals(128.0, upper.uncertainty(), 0.1);
    }

    /**
     * The last point has no neighbour that tells its bend: 2 dB off it is the last one's own 2 dB.
     */
    @Test
    void theOutermostPointDoesNotBend() {
        double[] u = {2, 0, 0, 0, 0, 0, 2};
        ResponseCurve curve = new ResponseCurve(HZ, new double[] {-8, 0, 0, 0, 0, 0, -8}, u);
        // between: bend −8 dB, 1 dB; −4 dB ± lies where −8·x = −4 ± (1·(1 − x) + 2·x)
        double near = (4 - 1) / (8 + 1.0);
        double far = (4 + 1) / (8 - 1.0);
        double at = 4000 * Math.sqrt(2);
        double expected = Math.max(at - 4000 * Math.pow(2, near), 4000 * Math.pow(2, far) - at);
        assertEquals(expected, curve.crossing(1, below(curve, -4), "-").uncertainty(), 1e-6);
        double low = 250 / Math.sqrt(2);
        double other = Math.max(250 * Math.pow(2, -near) - low, low - 250 * Math.pow(2, -far));
        assertEquals(other, curve.crossing(-1, below(curve, -4), "-").uncertainty(), 1e-6);
    }

    /** Where the curve, moved by its uncertainty, crosses no more, it may do so at its end. */
    @Test
    void aShallowCrossingReachesToTheEnd() {
        double[] u = {0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5};
        ResponseCurve curve = new ResponseCurve(HZ, new double[] {-3, -2, -1, 0, -1, -2, -3}, u);
        Quantity upper = curve.crossing(1, below(curve, -2.75), "never");
        double at = 4000 * Math.pow(2, 0.75);
        assertEquals(at, upper.value(), 1e-6);
        assertEquals(at - 4000 * Math.pow(2, 0.25), upper.uncertainty(), 1e-6);
        Quantity lower = curve.crossing(-1, below(curve, -2.75), "never");
        assertEquals(lower.value() - 125, 250 * Math.pow(2, -0.75) - 125, 1e-6);
        assertEquals(250 * Math.pow(2, -0.25) - lower.value(), lower.uncertainty(), 1e-6);
        Quantity none = curve.crossing(1, below(curve, -4), "never");
        assertFalse(none.isKnown());
        assertEquals("never", none.reason());
    }

    /**
     * An interface of −1 dB at 500 Hz of the recording to +1 dB at 4 kHz: two thirds of a dB an
     * octave. At half speed 4 kHz of the programme are 2 kHz there; 250 and 500 Hz are not known.
     * The interface is uncertain by 0.03 dB at 500 Hz, 0.06 dB at 4 kHz, the response by 0.04 dB.
     */
    @Test
    void anInterfaceIsTakenOutOfTheCurve() {
        InterfaceResponse known =
                Interfaces.of(
                                Interfaces.channel(
                                        "left",
                                        new InterfaceFigures.Curve(
                                                new double[] {500, 4000},
                                                new double[] {-1, 1},
                                                new double[] {0, 0},
                                                new double[] {0.03, 0.06})))
                        .response("left")
                        .orElseThrow();
        double[] u = {0.04, 0.04, 0.04, 0.04, 0.04, 0.04, 0.04};
        ResponseCurve rest =
                new ResponseCurve(HZ, new double[] {9, 9, 9, 1, 2, 3, 4}, u).over(known, 0.5);
        assertArrayEquals(new double[] {1000, 2000, 4000, 8000}, rest.hz());
        assertArrayEquals(new double[] {1 + 1, 2 + 1 / 3.0, 3 - 1 / 3.0, 4 - 1}, rest.db(), 1e-12);
        assertArrayEquals(
                new double[] {0.05, 0.056569, 0.064031, 0.072111}, rest.uncertaintyDb(), 1e-6);
    }
}
