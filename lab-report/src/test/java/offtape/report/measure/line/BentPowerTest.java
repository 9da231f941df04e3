package offtape.report.measure.line;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BentPowerTest {

    /**
     * 20 s at 100 Hz: a straight line between samples costs a sine of 2.3 Hz 0.4 % of its power.
     */
    private static Stretch stretch(DoubleUnaryOperator x) {
        double[] samples = new double[2000];
        Arrays.setAll(samples, i -> x.applyAsDouble((i - 999.5) / 100));
        return new Stretch(samples, 100);
    }

    /**
     * In the time u = 2t/(1 + √(1 + b·t)) a reel's line is steady: with b = ±0.04/s u runs through
     * 20/(1 + √1.4) + 20/(1 + √0.6) = 20.431 s, 2043 samples, which 2048 hold: a place is 100/2048
     * Hz.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0.04, -0.04})
    void aBentLineStandsOnOnePlace(double bend) {
        double hz = 48 * 100 / 2048.0;
        Stretch s =
                stretch(
                        t ->
                                3
                                        * Math.cos(
                                                2
                                                                * Math.PI
                                                                * hz
                                                                * 2
                                                                * t
                                                                / (1 + Math.sqrt(1 + bend * t))
                                                        + 0.7));
        BentPower power = new BentPower(s);
        assertEquals(100 / 2048.0, power.of(bend).binHz(), 1e-12);
        assertEquals(9, power.of(bend).power(48), 0.04);
        assertTrue(power.of(0).power(48) < 4, "spread where it is taken to be steady");
        assertTrue(power.of(-bend).power(48) < 2, "and more so if bent the other way");
        assertTrue(power.of(bend).isTop(48));
    }

    /**
     * What is read of any sound is the part of it that goes with the bent line under Hann's window:
     * |∫w·x·exp(−2πi·f·u)dt|²·4/(∫w)², here as sums over the samples. The window of each moment is
     * taken from the sample before, half of 0.01 s off on average: up to 0.005·π/20 = 0.08 % of the
     * window's height.
     */
    @Test
    void theWindowStaysThatOfTime() {
        double bend = 0.06;
        Stretch s =
                stretch(t -> Math.cos(2 * Math.PI * 0.4 * t + 1) + 0.5 * Math.sin(4 * t) * t / 10);
        LinePower power = new BentPower(s).of(bend);
        for (int k = 3; k <= 20; k++) {
            double re = 0;
            double im = 0;
            double sum = 0;
            for (int i = 0; i < 2000; i++) {
                double t = (i - 999.5) / 100;
                double w = 0.5 + 0.5 * Math.cos(2 * Math.PI * t / 20);
                double u = 2 * t / (1 + Math.sqrt(1 + bend * t));
                re += w * s.samples()[i] * Math.cos(2 * Math.PI * k * power.binHz() * u);
                im += w * s.samples()[i] * Math.sin(2 * Math.PI * k * power.binHz() * u);
                sum += w;
            }
            double expected = 2 * Math.hypot(re, im) / sum;
            assertEquals(expected, Math.sqrt(power.power(k)), 1e-3, "place " + k);
        }
    }

    /** The first and the last sample reach as far as the stretch does. */
    @Test
    void whatNeverChangesStaysSo() {
        Stretch steady = stretch(t -> 2.5);
        assertEquals(4 * 2.5 * 2.5, new BentPower(steady).of(0.08).power(0), 1e-9);
    }
}
