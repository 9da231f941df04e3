package offtape.report.measure.loopback;

import static offtape.report.measure.loopback.Loops.NO;
import static offtape.report.measure.loopback.Loops.db;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.result.Channels;
import offtape.report.result.Distortion;
import offtape.report.result.InterfaceFigures;
import offtape.report.result.LadderStep;
import offtape.report.result.StepNoise;
import org.junit.jupiter.api.Test;

/** Harmonics and leaks whose phases are not known may add or cancel. */
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

    /** −60 dB of a leak beside −40 dB: a tenth, so up to −20·log 0.9 = 0.915 dB less. */
    @Test
    void crosstalkOfTheInterfaceIsAFloor() {
        Quantity few = Quantity.known(0, "µs", 0.1);
        InterfaceFigures own =
                new InterfaceFigures(NO, null, few, db(-60, 0.1), db(-41, 0.1), List.of());
        Channels pair =
                new CrosstalkWithout(own)
                        .of(Channels.unknown("No.").withCrosstalk(db(-40, 0.1), db(-40, 0.1)));
        assertEquals(-40, pair.crosstalkLeftToRight().value(), 0);
        assertEquals(Math.hypot(0.1, 0.91515), pair.crosstalkLeftToRight().uncertainty(), 1e-4);
        // 10^(−1/20) of it: the machine's may be 1.891 times as much, +5.5 dB
        assertEquals(
                "What was heard (-40.0 dB) is hardly more than the interface's own crosstalk (-41.0"
                        + " dB); the machine's is less than -34.5 dB.",
                pair.crosstalkRightToLeft().reason());
    }
}
