package offtape.core.dsp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DifferentiatorTest {

    private static final double RATE = 1000;

    /** d/dt sin(2πft) = 2πf cos(2πft). */
    @ParameterizedTest
    @ValueSource(doubles = {0.0002, 0.004, 0.01, 0.05, 0.1, 0.2, 0.3, 0.35, 0.4})
    void differentiatesASine(double shareOfRate) {
        double w = 2 * Math.PI * shareOfRate * RATE;
        double[] x = samples(i -> Math.sin(w * i / RATE));
        double[] slope = Differentiator.apply(x, RATE);
        assertEquals(x.length - 2 * Differentiator.HALF, slope.length);
        double worst = 0;
        for (int k = 0; k < slope.length; k++) {
            double expected = w * Math.cos(w * (k + Differentiator.HALF) / RATE);
            worst = Math.max(worst, Math.abs(slope[k] - expected) / w);
        }
        System.out.printf("differentiator at %.4f fs: worst %.1e%n", shareOfRate, worst);
        assertTrue(worst < 1e-4, "error " + worst);
    }

    /** A ramp of 3 a second on a pedestal; the taps are odd, so the pedestal drops out. */
    @Test
    void differentiatesARamp() {
        double[] slope = Differentiator.apply(samples(i -> 7 + 3 * i / RATE), RATE);
        for (double s : slope) {
            assertEquals(3, s, 3e-4);
        }
    }

    @Test
    void refusesTooFewSamples() {
        double[] shortest = new double[2 * Differentiator.HALF + 1];
        assertEquals(1, Differentiator.apply(shortest, RATE).length);
        double[] tooShort = new double[2 * Differentiator.HALF];
        assertThrows(IllegalArgumentException.class, () -> Differentiator.apply(tooShort, RATE));
    }

    private static double[] samples(java.util.function.IntToDoubleFunction f) {
        return IntStream.range(0, 500).mapToDouble(f).toArray();
    }
}
