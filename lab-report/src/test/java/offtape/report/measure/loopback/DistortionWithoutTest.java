package offtape.report.measure.loopback;

import static offtape.report.measure.loopback.Loops.NO;
import static offtape.report.measure.loopback.Loops.db;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.result.Distortion;
import offtape.report.result.FittedCurve;
import offtape.report.result.HarmonicCurve;
import offtape.report.result.InterfaceFigures;
import offtape.report.result.InterfaceShare;
import offtape.report.result.LadderStep;
import offtape.report.result.StepNoise;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Harmonics whose phases are not known may add or cancel. */
class DistortionWithoutTest {

    private static LadderStep step(double levelDb, Double k2, Double k3, Double k3Below) {
        Double uncertainty = k3 == null ? null : (Double) 0.003;
        return new LadderStep(
                levelDb,
                levelDb,
                k2,
                k3,
                k3,
                0.0,
                0.001,
                false,
                new StepNoise(null, k3Below, null, uncertainty, 0.01, false));
    }

    private static Distortion heard(LadderStep... steps) {
        return new Distortion(
                "left",
                1000,
                List.of(steps),
                db(4, 0.03),
                NO,
                NO,
                NO,
                NO,
                db(3.9, 0.04),
                NO,
                null,
                null);
    }

    private static DistortionWithout without(InterfaceFigures.Step... steps) {
        return new DistortionWithout(
                Loops.channel(
                        NO,
                        null,
                        null,
                        List.of(),
                        new InterfaceFigures.Ladder(1000, List.of(steps))));
    }

    @Test
    void readingsStayAndTheirDoubtGrows() {
        DistortionWithout without =
                without(
                        new InterfaceFigures.Step(-20, null, 0.01),
                        new InterfaceFigures.Step(0, 0.03, 0.004),
                        new InterfaceFigures.Step(4, 0.001, 0.1));
        Distortion d =
                without.of(
                        heard(
                                step(-20, null, null, 0.02),
                                step(0, 0.05, 0.4, null),
                                step(4, 0.05, 1.0, null)));
        // a bound of the sum and one of the interface: the machine's is under both together
        assertEquals(0.03, d.steps().get(0).noise().k3BelowPercent(), 1e-12);
        assertEquals(0.4, d.steps().get(1).k3Percent(), 0);
        // √(0.003² + 0.004²)
        assertEquals(0.005, d.steps().get(1).noise().k3UncertaintyPercent(), 1e-12);
        assertTrue(d.steps().get(1).noise().limitedByInterface(), "K2 of 0.03 in 0.05");
        assertFalse(d.steps().get(2).noise().limitedByInterface(), "K3 of 0.1 in 1");
        // 20·log 1.1 = 0.8279 dB of K3, which rises by 2 dB a dB
        assertEquals(Math.hypot(0.03, 0.41393), d.levelAtK3OnePercent().uncertainty(), 1e-4);
        assertEquals(4, d.levelAtK3OnePercent().value(), 0);
        assertEquals(
                Math.hypot(0.04, 0.41393), d.maximumOutputLevelOnePercent().uncertainty(), 1e-4);
        assertEquals("K2 of 1000 Hz at +0 dB", without.entries().get(0).figure());
        assertEquals(60, without.entries().get(0).sharePercent(), 1e-9);
        assertTrue(without.entries().get(0).limits());
        assertFalse(without.entries().get(1).limits());
    }

    @Test
    void anotherLadderTellsNothing() {
        Distortion d = heard(step(0, 0.05, 0.4, null));
        assertEquals(
                d,
                new DistortionWithout(
                                Loops.channel(
                                        NO,
                                        null,
                                        null,
                                        List.of(),
                                        new InterfaceFigures.Ladder(315, List.of())))
                        .of(d));
    }

    private static final InterfaceFigures.Step[] STEPS = {
        new InterfaceFigures.Step(4, 0.001, 0.1),
        new InterfaceFigures.Step(-20, null, 0.01),
        new InterfaceFigures.Step(0, 0.03, 0.004),
        new InterfaceFigures.Step(-10, 0.02, null)
    };

    /** Bounds add: of the third harmonic 0.004, of all harmonics 0.03 + 0.004 more. */
    @Test
    void boundsAddUp() {
        StepNoise noise = new StepNoise(0.02, 0.01, 0.05, null, 0.07, true);
        LadderStep step = new LadderStep(0, 0.0, null, null, null, 0.0, 0.001, false, noise);
        StepNoise doubted = without(STEPS).of(heard(step)).steps().get(0).noise();
        assertEquals(0.05, doubted.k2BelowPercent(), 1e-12);
        assertEquals(0.014, doubted.k3BelowPercent(), 1e-12);
        assertEquals(0.084, doubted.thdBelowPercent(), 1e-12);
        assertNull(doubted.k3UncertaintyPercent());
        assertEquals(0.07, doubted.replayUncertaintyDb(), 0);
        assertTrue(doubted.leftOut());
        assertFalse(doubted.limitedByInterface(), "nothing was read");
        StepNoise unbounded = new StepNoise(null, null, null, 0.003, 0.07, false);
        LadderStep read = new LadderStep(0, 0.0, 1.0, 1.0, 1.4, 0.0, 0.001, false, unbounded);
        StepNoise left = without(STEPS).of(heard(read)).steps().get(0).noise();
        assertNull(left.k2BelowPercent());
        assertNull(left.k3BelowPercent());
        assertNull(left.thdBelowPercent());
    }

    /** A tenth of the second or of the third harmonic marks a step. */
    @ParameterizedTest
    @CsvSource({
        "0, 0.29, 1, true",
        "0, 0.31, 1, false",
        "0, 1, 0.039, true",
        "0, 1, 0.041, false",
        "-20, 0.001, 0.09, true",
        "-20, 0.001, 0.11, false"
    })
    void aTenthMarksAStep(double levelDb, double k2, double k3, boolean marked) {
        LadderStep step = without(STEPS).of(heard(step(levelDb, k2, k3, null))).steps().get(0);
        assertEquals(marked, step.noise().limitedByInterface());
    }

    /** A step of the interface is that of the same level, within 0.01 dB. */
    @Test
    void aStepWithoutACounterpartStaysAsItIs() {
        LadderStep near = step(0.009, 0.05, 0.4, null);
        LadderStep far = step(0.011, 0.05, 0.4, null);
        Distortion d = without(STEPS).of(heard(near, far));
        assertEquals(0.005, d.steps().get(0).noise().k3UncertaintyPercent(), 1e-12);
        assertSame(far, d.steps().get(1));
        assertEquals(2, d.steps().size());
    }

    private static List<InterfaceShare.Entry> entries(LadderStep... steps) {
        DistortionWithout without = without(STEPS);
        without.of(heard(steps));
        return without.entries();
    }

    /** Of the steps that were heard the one nearest to reference level is told. */
    @Test
    void theStepNearestToReferenceLevelIsTold() {
        LadderStep silent =
                new LadderStep(0, null, null, null, null, null, null, false, StepNoise.NOT_HEARD);
        List<InterfaceShare.Entry> entries =
                entries(step(-10, 0.5, 0.2, null), silent, step(4, 0.02, 0.2, null));
        assertEquals(2, entries.size());
        InterfaceShare.Entry two = entries.get(0);
        assertEquals("K2 of 1000 Hz at +4 dB", two.figure());
        assertEquals("left", two.channel());
        assertEquals("%", two.unit());
        assertEquals(0.001, two.own(), 0);
        assertEquals(0.02, two.heard(), 0);
        assertEquals(5, two.sharePercent(), 1e-9);
        assertFalse(two.limits());
        assertEquals("in the uncertainty", two.treatment());
        InterfaceShare.Entry three = entries.get(1);
        assertEquals("K3 of 1000 Hz at +4 dB", three.figure());
        assertEquals(50, three.sharePercent(), 1e-9);
        assertTrue(three.limits());
        assertEquals(
                List.of(), entries(step(-4, 0.5, 0.2, null)), "the interface has no such step");
        assertEquals(List.of(), entries(silent));
    }

    /** Over three tenths the interface limits, if the harmonic is over 0.01 % at all. */
    @ParameterizedTest
    @CsvSource({
        "0.33, 30.3, true",
        "0.34, 29.4, false",
        "0.05, 100, true",
        "0.0101, 100, true",
        "0.0099, 100, false"
    })
    void aLargeShareLimits(double k3, double sharePercent, boolean limits) {
        List<InterfaceShare.Entry> entries = entries(step(4, null, k3, null));
        assertNull(entries.get(0).heard(), "no second harmonic was read");
        assertNull(entries.get(0).sharePercent());
        assertFalse(entries.get(0).limits());
        assertEquals(sharePercent, entries.get(1).sharePercent(), 0.02);
        assertEquals(limits, entries.get(1).limits());
    }

    @Test
    void whatIsNotKnownOfTheInterfaceIsNotTold() {
        List<InterfaceShare.Entry> entries = entries(step(-20, 0.5, 0.2, null));
        assertEquals(1, entries.size(), "no second harmonic is known of it there");
        assertEquals("K3 of 1000 Hz at -20 dB", entries.get(0).figure());
    }

    private static Distortion curved(
            Quantity one,
            Quantity three,
            Quantity slope,
            FittedCurve k3,
            FittedCurve replay,
            LadderStep... steps) {
        return new Distortion(
                "left",
                1000.009,
                List.of(steps),
                one,
                three,
                db(7, 0.1),
                db(8, 0.04),
                db(9, 0.1),
                db(3.9, 0.05),
                slope,
                k3,
                replay);
    }

    private static FittedCurve curve(double[] levelDb, double... values) {
        double[] uncertainty = new double[values.length];
        Arrays.fill(uncertainty, 0.03);
        return new FittedCurve(levelDb, values, uncertainty, 0.7);
    }

    /**
     * Between its steps the interface has the larger of what it has at both: 0.01 from −30 dB to
     * below −10 dB, where nothing is known, and 0.004 from there to 0 dB, and 0.1 over that.
     */
    @Test
    void theCurveIsDoubtedPointByPoint() {
        double[] levels = {-30, -20, -15, -10, -5, 0, 2, 4, 10};
        double[] own = {0.01, 0.01, 0.01, 0, 0.004, 0.004, 0.1, 0.1, 0.1};
        FittedCurve k3 = curve(levels, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1);
        FittedCurve replay = curve(levels, -30, -20, -15, -10, -5, 0, 2, 4, 9);
        Distortion d = without(STEPS).of(curved(NO, NO, NO, k3, replay));
        for (int i = 0; i < levels.length; i++) {
            assertEquals(Math.hypot(0.03, own[i]), d.k3Curve().uncertainty()[i], 1e-12);
            assertEquals(0.1, d.k3Curve().value()[i], 0);
        }
        assertEquals(0.7, d.k3Curve().misfit(), 0);
        assertEquals(0.03, k3.uncertainty()[0], 0, "what was heard stays as it was");
        assertSame(replay, d.replayCurve());
        assertSame(NO, d.levelAtK3OnePercent());
        assertSame(NO, d.levelAtK3ThreePercent());
        assertEquals(db(8, 0.04), d.maximumOutputLevel());
        assertEquals(db(3.9, 0.05), d.maximumOutputLevelOnePercent());
        assertEquals(db(7, 0.1), d.levelAtCompressionOneDb());
        assertEquals(db(9, 0.1), d.saturationOutputLevel());
        assertEquals(1000.009, d.frequencyHz(), 0);
    }

    /**
     * K3 that rises fourfold in 2 dB rises by 6.02 dB a dB, twofold by 3.01. At 5 dB the interface
     * has 0.1 %: 20·log(1 + 0.1/1) = 0.8279 dB of one percent, 0.2848 dB of three, over the slope
     * of the curve's own part there: from 4 to 6 dB; at 4 dB and below from 2 to 4 dB; beyond the
     * ends as at the ends. A slope of under 0.3 counts as 0.3.
     */
    @ParameterizedTest
    @CsvSource({
        "5, 6.0206",
        "4.001, 6.0206",
        "4, 3.0103",
        "2.001, 3.0103",
        "2, 1.5836",
        "-3, 1.5836",
        "7, 0.3",
        "9, 0.3"
    })
    void aLevelIsDoubtedByTheSlope(double levelDb, double slope) {
        double[] levels = {0, 2, 4, 6, 8};
        FittedCurve k3 = curve(levels, 0.1, 0.144, 0.288, 1.152, 1.16);
        double own = levelDb > 0 ? 0.1 : 0.004;
        double one = 20 * Math.log10(1 + own) / slope;
        double three = 20 * Math.log10(1 + own / 3) / slope;
        FittedCurve replay = curve(levels, 0, 2, 3, 3.5, 3);
        Distortion d =
                without(STEPS).of(curved(db(levelDb, 0.02), db(levelDb, 0.06), NO, k3, replay));
        assertEquals(levelDb, d.levelAtK3OnePercent().value(), 0);
        assertEquals(Math.hypot(0.02, one), d.levelAtK3OnePercent().uncertainty(), 1e-4);
        assertEquals(Math.hypot(0.06, three), d.levelAtK3ThreePercent().uncertainty(), 1e-4);
        // the replay level follows the record level along its own curve, downhill not at all
        double rise = levelDb > 6 ? 0 : levelDb > 4 ? 0.25 : levelDb > 2 ? 0.5 : 1;
        assertEquals(Math.hypot(0.04, three * rise), d.maximumOutputLevel().uncertainty(), 1e-4);
        assertEquals(
                Math.hypot(0.05, one * rise), d.maximumOutputLevelOnePercent().uncertainty(), 1e-4);
    }

    /** One point tells no slope: as on tape K3 rises by 2 dB a dB, the replay level by 1 dB. */
    @Test
    void withoutACurveTheSlopeIsThatOfTape() {
        FittedCurve point = curve(new double[] {4}, 1);
        Distortion d = without(STEPS).of(curved(NO, db(4, 0.06), NO, point, point));
        double three = 20 * Math.log10(1 + 0.1 / 3) / 2;
        assertEquals(Math.hypot(0.06, three), d.levelAtK3ThreePercent().uncertainty(), 1e-6);
        assertEquals(Math.hypot(0.04, three), d.maximumOutputLevel().uncertainty(), 1e-6);
        FittedCurve two = curve(new double[] {4, 5}, 1, 2);
        Distortion told = without(STEPS).of(curved(NO, db(4, 0.06), NO, two, two));
        assertEquals(
                Math.hypot(0.06, three * 2 / 6.0206),
                told.levelAtK3ThreePercent().uncertainty(),
                1e-5);
    }

    /**
     * Slope over the steps that stand out and are no more than 3 %, here from −4 to 4 dB: 20·log(1
     * + 0.004/0.4) + 20·log(1 + 0.1/3) = 0.0864 + 0.2848 dB over 8 dB.
     */
    @Test
    void theSlopeIsDoubtedByBothEnds() {
        LadderStep[] steps = {
            step(-20, null, null, 0.02),
            step(-4, 0.05, 0.4, null),
            step(2, 0.05, 1.0, null),
            step(4, 0.05, 3.0, null),
            step(6, 0.05, 3.1, null)
        };
        Distortion d = without(STEPS).of(curved(NO, NO, db(2, 0.1), null, null, steps));
        assertEquals(2, d.k3Slope().value(), 0);
        double sway = 20 * Math.log10(1.01) + 20 * Math.log10(1 + 0.1 / 3);
        assertEquals(Math.hypot(0.1, sway / 8), d.k3Slope().uncertainty(), 1e-9);
        assertSame(NO, without(STEPS).of(curved(NO, NO, NO, null, null, steps)).k3Slope());
        assertEquals(
                db(2, 0.1),
                without(STEPS).of(curved(NO, NO, db(2, 0.1), null, null, steps[1])).k3Slope());
        Distortion both =
                without(STEPS).of(curved(NO, NO, db(2, 0.1), null, null, steps[1], steps[2]));
        assertTrue(both.k3Slope().uncertainty() > 0.1, "two steps are enough");
        assertNull(d.k3Curve());
    }

    /** A ladder of the same frequency, within 0.01 Hz. */
    @Test
    void aLadderIsKnownByItsFrequency() {
        LadderStep step = step(0, 0.05, 0.4, null);
        Distortion near = curved(NO, NO, NO, null, null, step);
        assertEquals(
                0.005,
                without(STEPS).of(near).steps().get(0).noise().k3UncertaintyPercent(),
                1e-12);
        Distortion far =
                new Distortion(
                        "left", 1000.011, List.of(step), NO, NO, NO, NO, NO, NO, NO, null, null);
        assertSame(far, without(STEPS).of(far));
    }

    private static InterfaceFigures.Channel withHarmonics(HarmonicCurve... curves) {
        return new InterfaceFigures.Channel(
                "left",
                -18.0,
                Quantity.known(10, "ms", 0.001),
                null,
                NO,
                NO,
                NO,
                null,
                List.of(),
                List.of(),
                List.of(curves));
    }

    /**
     * The interface's harmonic of the same order within 1 % of the frequency: 0.004 beside a doubt
     * of 0.003 make 0.005; at right angles to 0.4 it turns by atan 0.01 = 0.573°.
     */
    @Test
    void harmonicsOfASweepAreDoubted() {
        HarmonicCurve own =
                new HarmonicCurve(
                        3,
                        List.of(
                                new HarmonicCurve.Point(991, 0.004, 0.001, 0.001),
                                new HarmonicCurve.Point(1008, 0.002, 0.001, 0.001),
                                new HarmonicCurve.Point(1000, null, null, 0.001),
                                new HarmonicCurve.Point(2030, 0.3, 0.001, 0.001)));
        HarmonicCurve other =
                new HarmonicCurve(2, List.of(new HarmonicCurve.Point(1000, 0.7, 0.001, 0.001)));
        HarmonicCurve.Point quiet = new HarmonicCurve.Point(500, null, null, 0.001);
        List<HarmonicCurve> heard =
                List.of(
                        new HarmonicCurve(
                                3,
                                List.of(
                                        new HarmonicCurve.Point(
                                                1000, 0.4, 0.003, 0.001, 170.0, 2.0),
                                        new HarmonicCurve.Point(2000, 0.4, 0.003, 0.001),
                                        quiet)));
        HarmonicCurve found = new DistortionWithout(withHarmonics(own, other)).of(heard).get(0);
        assertEquals(3, found.order());
        HarmonicCurve.Point point = found.points().get(0);
        assertEquals(1000, point.frequencyHz(), 0);
        assertEquals(0.4, point.percent(), 0);
        assertEquals(0.005, point.uncertaintyPercent(), 1e-12);
        assertEquals(0.001, point.floorPercent(), 0);
        assertEquals(170, point.phaseDegrees(), 0);
        assertEquals(Math.hypot(2, 0.57294), point.phaseUncertaintyDegrees(), 1e-4);
        HarmonicCurve.Point far = found.points().get(1);
        assertEquals(0.003, far.uncertaintyPercent(), 1e-12, "1.5 % off is another point");
        assertNull(far.phaseUncertaintyDegrees());
        assertSame(quiet, found.points().get(2));
    }
}
