package offtape.report.measure.channel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.util.Arrays;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import offtape.core.unit.Quantity;
import offtape.report.result.PairPhaseCurve;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The delay of phases by formula, in 352 bands of a forty-eighth of an octave from 100 Hz. */
class DelayOfBandsTest {

    private static final int BANDS = 352;
    private static final double[] W = radiansPerS(BANDS);

    /** What unlike amplifiers do to the phase: first order, an edge at 12 kHz. */
    private static final double[] RESPONSE =
            Arrays.stream(W).map(w -> Math.atan(w / (2 * Math.PI * 12_000))).toArray();

    private static double[] radiansPerS(int count) {
        return IntStream.range(0, count)
                .mapToDouble(i -> 2 * Math.PI * 100 * Math.pow(2, i / 48.0))
                .toArray();
    }

    private static PhaseBands bands(int count, double weight, IntToDoubleFunction phase) {
        double[] weights = new double[count];
        Arrays.fill(weights, weight);
        return new PhaseBands(
                Arrays.copyOf(W, count),
                IntStream.range(0, count).mapToDouble(phase).toArray(),
                weights,
                Arrays.copyOf(RESPONSE, count));
    }

    /** Slope of a straight line through zero by squares. */
    private static double slope(double[] phase) {
        double up = 0;
        double down = 0;
        for (int i = 0; i < W.length; i++) {
            up += W[i] * phase[i];
            down += W[i] * W[i];
        }
        return up / down;
    }

    /**
     * 20 µs and half turns: an odd number of them is a channel the wrong way round. Phases known
     * beyond doubt leave 0.03 µs of its own and a share of the delay: 0.05 %, 0.01 µs; with a leak
     * that nobody looked for 1 % more, 0.21 µs.
     */
    @ParameterizedTest
    @CsvSource({
        "20, 0, true, 0.031623",
        "20, 1, true, 0.031623",
        "-20, -1, true, 0.031623",
        "20, 2, true, 0.031623",
        "20, 0, false, 0.212132",
        "-20, -3, false, 0.212132",
        "0, 0, false, 0.03"
    })
    void aStraightLineIsADelay(double us, int halfTurns, boolean known, double uncertainty) {
        InterchannelDelay fit =
                InterchannelDelay.of(
                        bands(BANDS, 1e12, i -> 1e-6 * us * W[i] + Math.PI * halfTurns), known);
        assertEquals(us, fit.delay().value(), 1e-6);
        assertEquals("µs", fit.delay().unit());
        assertEquals(uncertainty, fit.delay().uncertainty(), 1e-5);
        assertEquals(halfTurns % 2 != 0, fit.opposite());
        assertEquals(0, fit.responseDelay().value());
        assertEquals(uncertainty, fit.responseDelay().uncertainty(), 1e-5);
        assertEquals(0, fit.phaseResidual().value(), 1e-6);
    }

    /** With twice the slope's standard error 0.04 µs: √(0.04² + 0.03² + 0.01²) = 0.05099. */
    @Test
    void doubtOfThePhasesIsDoubtOfTheDelay() {
        double squares = Arrays.stream(W).map(w -> w * w).sum();
        double weight = 1 / (squares * 0.02e-6 * 0.02e-6);
        double[] phase = Arrays.stream(W).map(w -> 20e-6 * w).toArray();
        PhaseBands bands = new PhaseBands(W, phase, weights(weight), new double[BANDS]);
        assertEquals(0.05099, InterchannelDelay.of(bands, true).delay().uncertainty(), 1e-5);
    }

    private static double[] weights(double weight) {
        double[] weights = new double[BANDS];
        Arrays.fill(weights, weight);
        return weights;
    }

    /** Phases that lie 0.02 rad above and below in turn: 1.146° rms. */
    @Test
    void whatTheLineLeavesIsTold() {
        InterchannelDelay fit =
                InterchannelDelay.of(
                        bands(BANDS, 1, i -> 20e-6 * W[i] + (i % 2 == 0 ? 0.02 : -0.02)), true);
        assertEquals(Math.toDegrees(0.02), fit.phaseResidual().value(), 0.001);
        assertEquals("°", fit.phaseResidual().unit());
        assertEquals(0.2, fit.phaseResidual().uncertainty());
    }

    /**
     * A share of what the responses would turn lies in the phases. What a line leaves grows with
     * the square of what is not explained, so the responses explain four times less badly from a
     * share of two thirds on, and are ruled out under one third; in between nothing is told.
     */
    @ParameterizedTest
    @CsvSource({"1, 1", "0.68, 1", "0.65, 0", "0.35, 0", "0.32, -1", "0, -1"})
    void phasesThatFollowTheResponsesAreToldApart(double share, int told) {
        InterchannelDelay fit =
                InterchannelDelay.of(
                        bands(BANDS, 1e9, i -> 20e-6 * W[i] + share * RESPONSE[i]), true);
        double response = 1e6 * slope(RESPONSE);
        double delay = 20 + (told > 0 ? share - 1 : share) * response;
        assertEquals(delay, fit.delay().value(), 1e-6);
        assertEquals(told > 0 ? response : 0, fit.responseDelay().value(), 1e-6);
        double notKnown = (told > 0 ? 0.5 : told < 0 ? 0 : 1.5) * Math.abs(response);
        double own = Math.hypot(0.03, 0.0005 * delay);
        // phases this sure leave no doubt but that of what they do not follow
        assertEquals(Math.hypot(notKnown, own), fit.delay().uncertainty(), 0.03);
        assertEquals(fit.delay().uncertainty(), fit.responseDelay().uncertainty(), 1e-9);
    }

    /** What is left must be more than the phases may err by: their number, in units of variance. */
    @ParameterizedTest
    @CsvSource({"0.97, false", "1.03, true"})
    void aLineIsRuledOutBeyondItsDoubt(double times, boolean follows) {
        PhaseBands straight = bands(BANDS, 1, i -> RESPONSE[i]);
        double weight = times * BANDS / new PhaseLine(straight).rest();
        InterchannelDelay fit = InterchannelDelay.of(bands(BANDS, weight, i -> RESPONSE[i]), true);
        assertEquals(follows, fit.responseDelay().value() != 0);
    }

    @Test
    void fewBandsTellNothing() {
        assertEquals(20, InterchannelDelay.of(line(12), true).delay().value(), 1e-6);
        InterchannelDelay none = InterchannelDelay.of(line(11), true);
        assertFalse(none.delay().isKnown());
        assertEquals("The sweep was not heard on both channels.", none.delay().reason());
        assertEquals(none.delay(), none.responseDelay());
        assertEquals(none.delay(), none.phaseResidual());
        assertFalse(none.opposite());
    }

    private static PhaseBands line(int count) {
        return new PhaseBands(
                Arrays.copyOf(W, count),
                Arrays.stream(W).limit(count).map(w -> 20e-6 * w).toArray(),
                Arrays.copyOf(weights(1e12), count),
                new double[count]);
    }

    /** An interface's own delay is out of it; its doubt, 0.04 µs, is added to 0.03. */
    @Test
    void theDoubtOfAnInterfaceIsAdded() {
        Quantity zero = Quantity.known(0, "µs", 1);
        InterchannelDelay fit =
                new InterchannelDelay(Quantity.known(20, "µs", 0.03), zero, zero, true);
        InterchannelDelay less = fit.less(Quantity.known(7, "µs", 0.04));
        assertEquals(20, less.delay().value());
        assertEquals(0.05, less.delay().uncertainty(), 1e-12);
        assertSame(zero, less.responseDelay());
        assertEquals(true, less.opposite());
        assertSame(fit, fit.less(Quantity.unknown("not known")));
        InterchannelDelay none = InterchannelDelay.unknown("not heard");
        assertSame(none, none.less(Quantity.known(7, "µs", 0.04)));
    }

    /**
     * Four bands a point, weighted: frequencies 1, 2, 3, 4 Hz of a programme that ran 10 % fast, of
     * which the last weighs as much as the others: (1 + 2 + 3 + 3·4)/6 = 3 Hz; their phases so the
     * same, 3 rad, right behind left. Twice the standard error is 2/√6 rad.
     */
    @ParameterizedTest
    @ValueSource(ints = {4, 7})
    void theDifferenceIsToldInTwelfthsOfAnOctave(int count) {
        double[] w = new double[count];
        double[] phase = new double[count];
        double[] weight = new double[count];
        for (int i = 0; i < count; i++) {
            w[i] = 2 * Math.PI * 1.1 * (i + 1);
            phase[i] = i + 1;
            weight[i] = i == 3 ? 3 : 1;
        }
        PairPhaseCurve curve = new PhaseBands(w, phase, weight, phase).difference(1.1);
        assertEquals(1, curve.frequencyHz().length);
        assertEquals(3, curve.frequencyHz()[0], 1e-12);
        assertEquals(-Math.toDegrees(3), curve.degrees()[0], 1e-9);
        assertEquals(Math.toDegrees(2 / Math.sqrt(6)), curve.uncertaintyDegrees()[0], 1e-9);
    }

    @Test
    void eachPointHasItsOwnBands() {
        PairPhaseCurve curve = bands(8, 1, i -> i).difference(1);
        assertEquals(2, curve.degrees().length);
        assertEquals(-Math.toDegrees(1.5), curve.degrees()[0], 1e-9);
        assertEquals(-Math.toDegrees(5.5), curve.degrees()[1], 1e-9);
        assertNull(bands(3, 1, i -> i).difference(1));
    }
}
