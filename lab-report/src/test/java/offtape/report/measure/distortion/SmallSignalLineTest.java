package offtape.report.measure.distortion;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.apache.commons.math3.analysis.integration.RombergIntegrator;
import org.junit.jupiter.api.Test;

class SmallSignalLineTest {

    /**
     * A cubic characteristic compresses by 20·lg(1 − cA²), all but straight in A². With c = 0.02 at
     * 0 dB the highest step used, −2 dB, has cA² = 0.0126, whose square leaves 0.0007 dB there and
     * less than half of that in the line.
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

    /** Steps that have lost more than 0.15 dB, however bent, do not enter. */
    @Test
    void loudStepsDoNotEnter() {
        assertEquals(-1, fit(db -> db > -4 ? -50 : db - 1, -20).gainDb(), 1e-9);
    }

    /**
     * Two steps: the straight line in A². Gains of −0.1 and −1 dB at 0 and 10 dB, where A² is 1 and
     * 10: 0.9 dB over 9 units, so 0.1 dB more at zero; half of that correction is in doubt.
     */
    @Test
    void twoStepsGiveAStraightLine() {
        SmallSignalLine line =
                SmallSignalLine.fit(
                        new double[] {0, 10}, new double[] {-0.1, -1}, new double[] {1e-9, 1e-9});
        assertEquals(0, line.gainDb(), 1e-12);
        assertEquals(0.05, line.deviationDb(), 1e-9);
    }

    /** One step alone is taken for uncompressed. */
    @Test
    void oneStepGivesItsGain() {
        SmallSignalLine line =
                SmallSignalLine.fit(new double[] {-6}, new double[] {0.75}, new double[] {0.01});
        assertEquals(0.75, line.gainDb(), 0);
        assertEquals(0.01, line.deviationDb(), 0);
    }

    /**
     * Three steps of equal noise 0.01 dB with A² of 0, 1 and 2 (in effect): the intercept of a
     * straight line has the variance σ²·Σp²/(nΣp² − (Σp)²) = 5/6·σ².
     */
    @Test
    void noiseOfTheStepsComesThrough() {
        SmallSignalLine line =
                SmallSignalLine.fit(
                        new double[] {-200, 0, 10 * Math.log10(2)},
                        new double[] {0, 0, 0},
                        new double[] {0.01, 0.01, 0.01});
        assertEquals(0.01 * Math.sqrt(5.0 / 6), line.deviationDb(), 1e-9);
    }

    /**
     * A lowest step known to 0.1 dB may have read high: steps count up to a loss of 0.15 dB and
     * three deviations. Gains of 0, −0.3 and −0.3 dB at A² of 0, 1 and 2: means −0.2 and 1, slope
     * −0.15, so −0.05 dB at zero. The lowest alone, or the line through two, would be 0.
     */
    @Test
    void whatMayBeNoiseOfTheLowestStepIsNoLoss() {
        SmallSignalLine line =
                SmallSignalLine.fit(
                        new double[] {-200, 0, 10 * Math.log10(2)},
                        new double[] {0, -0.3, -0.3},
                        new double[] {0.1, 0.1, 0.1});
        assertEquals(-0.05, line.gainDb(), 1e-9);
    }

    /**
     * Two steps at the lowest level tell its gain alone, −0.1 dB; the line goes on to the next
     * level: −1 dB at ten times the power adds 0.1 dB.
     */
    @Test
    void twoStepsAtOneLevelAreOnePlace() {
        double[] known = {1e-9, 1e-9, 1e-9, 1e-9};
        SmallSignalLine line =
                SmallSignalLine.fit(new double[] {0, 0, 10}, new double[] {-0.1, -0.1, -1}, known);
        assertEquals(0, line.gainDb(), 1e-9);
        SmallSignalLine three =
                SmallSignalLine.fit(
                        new double[] {0, 0, 0, 10}, new double[] {-0.1, -0.1, -0.1, -1}, known);
        assertEquals(0, three.gainDb(), 1e-9);
        SmallSignalLine alone =
                SmallSignalLine.fit(new double[] {0, 0}, new double[] {-0.1, -0.1}, known);
        assertEquals(-0.1, alone.gainDb(), 0);
    }

    private static double fundamental(double a) {
        return new RombergIntegrator(1e-11, 1e-13, 4, 20)
                        .integrate(
                                1 << 20, p -> Math.tanh(a * Math.sin(p)) * Math.sin(p), 0, Math.PI)
                * 2
                / Math.PI;
    }

    private static SmallSignalLine fit(DoubleUnaryOperator replayDb, int lowestDb) {
        double[] record =
                IntStream.iterate(lowestDb, db -> db <= 12, db -> db + 2)
                        .mapToDouble(db -> db)
                        .toArray();
        double[] gain =
                DoubleStream.of(record).map(db -> replayDb.applyAsDouble(db) - db).toArray();
        double[] deviation = new double[record.length];
        Arrays.fill(deviation, 1e-6);
        return SmallSignalLine.fit(record, gain, deviation);
    }

    private static double power(double db) {
        return Math.pow(10, db / 10);
    }

    private static double amplitude(double db) {
        return Math.pow(10, db / 20);
    }
}
