package offtape.report.measure.distortion;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;
import offtape.core.unit.Quantity;
import offtape.report.result.LadderStep;
import offtape.report.result.StepNoise;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The saturation output level from ladders of treble tones given step by step. */
class SaturationTest {

    /** A parabola whose top, −3 dB, lies between two steps. */
    @ParameterizedTest
    @ValueSource(doubles = {2, 3, 4})
    void aMaximumWithinTheLadderIsFitted(double step) {
        Quantity found = saturation(x -> -3 - 0.03 * (x - 5.1) * (x - 5.1), -19, 14, step, 0);
        assertEquals(-3, found.value(), 0.01);
        assertEquals(-3, found.value(), found.uncertainty());
        assertTrue(found.uncertainty() < 0.1);
    }

    /** With noise of 0.05 dB on each step it holds its uncertainty in 92 of 100 draws or more. */
    @Test
    void theUncertaintyHolds() {
        int held = 0;
        for (int seed = 0; seed < 100; seed++) {
            Quantity q = saturation(x -> -3 - 0.03 * (x - 5) * (x - 5), -20, 14, 2, seed + 1);
            held += q.isKnown() && Math.abs(q.value() + 3) <= q.uncertainty() ? 1 : 0;
        }
        System.out.printf("saturation output level: %d of 100 within%n", held);
        assertTrue(held >= 92, held + " of 100");
    }

    /**
     * A tone that ends as a square wave: −1 dB less c·10^(−x/10). With c = 1 there are 10^−1.2 =
     * 0.063 dB still to come at +12 dB, of which three quarters are counted in; the uncertainty
     * holds the rest.
     */
    @Test
    void aLevelThatEvensOutIsTaken() {
        Quantity found = saturation(SaturationTest::evening, -8, 12, 2, 0);
        assertEquals(evening(12) + 0.75 * Math.pow(10, -1.2), found.value(), 0.005);
        assertEquals(-1, found.value(), found.uncertainty());
        assertTrue(found.uncertainty() < 0.1);
    }

    private static double evening(double x) {
        return -1 - Math.pow(10, -x / 10);
    }

    @Test
    void aLevelThatStillRisesSaysHowFarItCame() {
        Quantity found = saturation(x -> x - 4, -20, 8, 2, 0);
        assertFalse(found.isKnown());
        assertEquals(
                "Not reached: the replay level still rises at the top of the ladder, where +8 dB"
                        + " recorded come back at +4.0 dB.",
                found.reason());
    }

    private static Quantity saturation(
            DoubleUnaryOperator replay, double from, double to, double step, long seed) {
        Random random = new Random(seed);
        double noise = seed == 0 ? 0 : 0.05;
        List<LadderStep> steps =
                DoubleStream.iterate(from, x -> x <= to, x -> x + step)
                        .mapToObj(
                                x ->
                                        step(
                                                x,
                                                replay.applyAsDouble(x)
                                                        + noise * random.nextGaussian(),
                                                2 * noise))
                        .toList();
        LadderFit fit = new LadderFit(steps);
        return new LadderCurve(steps, 10_000, fit, fit.smallSignal(), 0).saturationOutputLevel();
    }

    private static LadderStep step(double recordDb, double replayDb, double uncertaintyDb) {
        StepNoise noise = new StepNoise(null, null, null, null, uncertaintyDb, false);
        return new LadderStep(recordDb, replayDb, null, null, null, null, null, true, noise);
    }
}
