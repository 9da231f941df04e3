package offtape.report.measure.distortion;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import offtape.report.result.FittedCurve;
import offtape.report.result.LadderStep;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which steps tell the curves, and the curves as they are given out. */
class LadderFitTest {

    /**
     * Two steps make a straight line, here of K3 by 2 dB per dB and of a gain of −1.5 dB less 0.25
     * dB per dB. Every half decibel from −1 dB and at +3.2 dB; at a step the line is as uncertain
     * as the step is. K3 of 1 ± 0.02 % (k = 2) has 20·lg 1.01 dB for one deviation, to which
     * tracking adds 0.006 dB; the level 0.1 dB and 0.0015 dB.
     */
    @Test
    void curvesAreGivenInHalfDecibels() {
        LadderFit fit =
                new LadderFit(
                        List.of(
                                Steps.step(-1, -2.25, 1, 0.02, 0.2),
                                Steps.step(3.2, 0.9, Steps.percent(8.4), 0.02, 0.2)));
        double[] places = {-1, -0.5, 0, 0.5, 1, 1.5, 2, 2.5, 3, 3.2};
        FittedCurve k3 = fit.k3Given();
        assertArrayEquals(places, k3.recordLevelDb(), 1e-12);
        assertArrayEquals(
                DoubleStream.of(places).map(x -> Steps.percent(2 * (x + 1))).toArray(),
                k3.value(),
                1e-9);
        double deviationDb = Math.hypot(20 * Math.log10(1.01), 0.006);
        assertEquals(2 * deviationDb * Math.log(10) / 20, k3.uncertainty()[0], 1e-6);
        assertEquals(0, k3.misfit(), 1e-9);
        FittedCurve replay = fit.replayGiven();
        assertArrayEquals(places, replay.recordLevelDb(), 1e-12);
        assertArrayEquals(
                DoubleStream.of(places).map(x -> x - 1.25 - 0.25 * (x + 1)).toArray(),
                replay.value(),
                1e-9);
        assertEquals(2 * Math.hypot(0.1, 0.0015), replay.uncertainty()[0], 1e-6);
        assertEquals(2 * Math.hypot(0.1, 0.0015), replay.uncertainty()[9], 1e-6);
    }

    /** An uncertainty in percent grows with K3: of 4 %, four times as much as of 1 %. */
    @Test
    void theUncertaintyOfTheThirdIsAShareOfIt() {
        LadderFit fit =
                new LadderFit(List.of(Steps.step(0, 0, 1, 0.02, 0), Steps.step(6, 6, 4, 0.08, 0)));
        double[] u = fit.k3Given().uncertainty();
        assertEquals(4 * u[0], u[12], 1e-6);
    }

    /** 20·lg(1 + 0.1) = 0.8279 dB for K3 of 1 % ± 0.2 % (k = 2), and 0.006 dB of tracking. */
    @Test
    void noiseOfTheThirdIsADeviationInDecibels() {
        assertEquals(
                Math.hypot(0.827854, 0.006),
                LadderFit.k3DeviationDb(Steps.step(0, 0, 1, 0.2, 0)),
                1e-6);
    }

    /**
     * K3 rises by 2 dB per dB in steps of 2 dB, known to ± 6 % (0.26 dB for a deviation), the level
     * by 1 dB per dB. One step lost 3 dB of level and 1 dB of K3, which alone is no stray: nothing
     * of it may be in either curve.
     */
    @Test
    void aStepOfAStrayLevelIsInNeitherCurve() {
        List<LadderStep> steps = new ArrayList<>();
        for (int i = 0; i < 9; i++) {
            double lost = i == 5 ? 1 : 0;
            double percent = Steps.percent(-20 + 4 * i - lost);
            steps.add(Steps.step(2 * i, 2 * i - 3 * lost, percent, 0.06 * percent, 0.004));
        }
        LadderFit fit = new LadderFit(steps);
        for (int i = 0; i < 9; i++) {
            assertEquals(i == 5, fit.standsOff(steps.get(i)), "step " + i);
        }
        assertEquals(0, fit.k3().at(10), 1e-6);
        assertEquals(0, fit.gain().at(10), 1e-6);
        assertEquals(9, fit.clear().size());
    }

    @Test
    void oneStepHasNoCurve() {
        LadderFit fit = new LadderFit(List.of(Steps.step(0, -1, 1)));
        assertNull(fit.k3Given());
        assertNull(fit.replayGiven());
        assertEquals(-1, fit.smallSignal().gainDb());
        assertFalse(fit.standsOff(Steps.step(0, -1, 1)));
    }

    @Test
    void stepsThatWereNotHeardTellNothing() {
        List<LadderStep> steps =
                List.of(
                        Steps.notHeard(-10),
                        Steps.withoutThird(-5, -5, 0.1),
                        Steps.step(0, 0, 1),
                        Steps.step(2, 2, 2),
                        Steps.notHeard(4));
        LadderFit fit = new LadderFit(steps);
        assertEquals(-5, fit.gain().first());
        assertEquals(2, fit.gain().last());
        assertEquals(0, fit.k3().first());
        assertNull(new LadderFit(List.of(Steps.notHeard(0))).smallSignal());
    }

    /** Less than 0.005 % is rounding's; exactly so much counts. */
    @ParameterizedTest
    @CsvSource({"0.005, 2", "0.0049, 1"})
    void faintThirdsAreLeftOut(double percent, int clear) {
        LadderFit fit = new LadderFit(List.of(Steps.step(-10, -10, percent), Steps.step(0, 0, 1)));
        assertEquals(clear, fit.clear().size());
    }

    /**
     * Up to 10 %, and the first step after one of no more than 3 % in any case, since the level at
     * which K3 reaches 3 % may lie between them.
     */
    @ParameterizedTest
    @CsvSource({
        "1, 2.9, 12, 14, 3",
        "1, 3, 12, 14, 3",
        "1, 3.1, 12, 14, 2",
        "1, 3.1, 10, 14, 3",
        "1, 3.1, 10, 5, 4",
        "2, 20, 9, 14, 3",
        "12, 14, 15, 16, 1"
    })
    void highThirdsCountWhereTheyAreNeeded(
            double first, double second, double third, double fourth, int count) {
        double[] k3 = {first, second, third, fourth};
        List<LadderStep> steps =
                IntStream.range(0, 4).mapToObj(i -> Steps.step(2 * i, 2 * i, k3[i])).toList();
        List<LadderStep> clear = new LadderFit(steps).clear();
        assertEquals(count, clear.size());
        assertEquals(first, clear.get(0).k3Percent());
    }

    /**
     * A step that came back 1 dB low, the second of eleven without compression, leaves the small
     * signal's gain alone: +0.5 dB.
     */
    @Test
    void aStepThatStandsOffDoesNotTellTheSmallSignal() {
        List<LadderStep> steps =
                new ArrayList<>(
                        Steps.ladder(
                                x -> x + 0.5,
                                x -> 2 * x - 8,
                                IntStream.range(0, 11).mapToDouble(i -> 2 * i - 16).toArray()));
        LadderStep low = Steps.step(-14, -14.5, Steps.percent(-36), 0, 0.1);
        steps.set(1, low);
        LadderFit fit = new LadderFit(steps);
        assertTrue(fit.standsOff(low));
        assertFalse(fit.standsOff(steps.get(0)));
        assertFalse(fit.standsOff(steps.get(2)));
        assertEquals(0.5, fit.smallSignal().gainDb(), 1e-6);
    }

    /** One whose third harmonic alone is high stands off as well: 3 dB in a straight line. */
    @Test
    void aStepMayStandOffByItsThirdAlone() {
        List<LadderStep> steps =
                new ArrayList<>(
                        Steps.ladder(
                                x -> x,
                                x -> 2 * x - 8,
                                IntStream.range(0, 11).mapToDouble(i -> 2 * i - 14).toArray()));
        LadderStep high = Steps.step(-4, -4, Steps.percent(-13), 0.02 * Steps.percent(-13), 0);
        steps.set(5, high);
        LadderFit fit = new LadderFit(steps);
        assertTrue(fit.standsOff(high));
        assertFalse(fit.standsOff(steps.get(4)));
        assertEquals(-16, fit.k3().at(-4), 1e-6);
    }

    /**
     * A ladder that goes up and down again has two steps at each level, which both count: where
     * they differ, by 0.02 dB here, the curve goes between them.
     */
    @Test
    void severalStepsAtOneLevelCountTogether() {
        List<LadderStep> steps = new ArrayList<>();
        for (double x = -8; x <= 8; x += 4) {
            steps.add(Steps.step(x, x + 0.01, Steps.percent(2 * x)));
            steps.add(Steps.step(x, x - 0.01, Steps.percent(2 * x)));
        }
        LadderFit fit = new LadderFit(steps);
        assertEquals(0, fit.gain().at(0), 0.005);
        assertEquals(0, fit.k3().at(0), 0.005);
        assertEquals(0, fit.smallSignal().gainDb(), 0.02);
    }
}
