package offtape.report.measure.distortion;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.apache.commons.math3.analysis.integration.RombergIntegrator;
import org.junit.jupiter.api.Test;

class SmallSignalLineTest {

    /**
     * A cubic characteristic compresses by 20·lg(1 − cA²), all but straight in A². With c = 0.02 at
     * 0 dB the highest step used, −4 dB, has cA² = 0.008, whose square leaves 0.0003 dB.
     */
    @Test
    void cubicCompressionIsTakenOut() {
        SmallSignalLine line = fit(db -> db + 2.5 + 20 * Math.log10(1 - 0.02 * power(db)), -20);
        assertEquals(2.5, line.gainDb(), 0.0003);
    }

    /**
     * The fundamental of tanh(A·sin φ) is (2/π)∫ tanh(A sin φ) sin φ dφ over half a turn, here by
     * Commons Math; the small-signal gain is 1. The lowest step alone would be off by 0.0017 dB.
     */
    @Test
    void saturationIsTakenOut() {
        SmallSignalLine line =
                fit(db -> 20 * Math.log10(fundamental(0.2 * amplitude(db)) / 0.2), -20);
        System.out.printf("small-signal gain of tanh: %.5f dB off%n", line.gainDb());
        assertEquals(0, line.gainDb(), 0.0005);
    }

    /** Steps above −4 dB, however bent, do not enter. */
    @Test
    void loudStepsDoNotEnter() {
        assertEquals(-1, fit(db -> db > -4 ? -50 : db - 1, -20).gainDb(), 1e-9);
    }

    /** Fewer than three quiet steps: the gain of the lowest. */
    @Test
    void fewStepsGiveTheGainOfTheLowest() {
        assertEquals(0.75, fit(db -> db == -6 ? db + 0.75 : db, -6).gainDb(), 1e-12);
        assertNull(SmallSignalLine.fit(List.<Double>of(), r -> r, r -> r));
    }

    private static double fundamental(double a) {
        return new RombergIntegrator(1e-11, 1e-13, 4, 20)
                        .integrate(
                                1 << 20, p -> Math.tanh(a * Math.sin(p)) * Math.sin(p), 0, Math.PI)
                * 2
                / Math.PI;
    }

    private static SmallSignalLine fit(DoubleUnaryOperator replayDb, int lowestDb) {
        List<Double> steps =
                IntStream.iterate(lowestDb, db -> db <= 12, db -> db + 2)
                        .mapToObj(Double::valueOf)
                        .toList();
        return SmallSignalLine.fit(steps, r -> r, replayDb::applyAsDouble);
    }

    private static double power(double db) {
        return Math.pow(10, db / 10);
    }

    private static double amplitude(double db) {
        return Math.pow(10, db / 20);
    }
}
