package offtape.core.audio;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class TpdfDitherTest {

    /** The first numbers of SplitMix64 from the seed 1234567, as commonly listed (from memory). */
    @Test
    void theGeneratorGivesThePublishedNumbers() {
        TpdfDither dither = new TpdfDither(1234567);
        assertEquals(6457827717110365317L, dither.nextLong());
        assertEquals(3203168211198807973L, dither.nextLong());
        assertEquals("9817491932198370423", Long.toUnsignedString(dither.nextLong()));
    }

    /** The platform's generator of the same design agrees. */
    @Test
    void thePlatformAgrees() {
        TpdfDither dither = new TpdfDither(-5);
        SplittableRandom platform = new SplittableRandom(-5);
        for (int i = 0; i < 1000; i++) {
            assertEquals(platform.nextLong(), dither.nextLong());
        }
    }

    /**
     * Difference of two uniform values on 0…1: within ±1, mean 0, variance 1/6, and half of them
     * beyond 1 − 1/√2 = 0.2929. Scatter over n values: 0.41/√n, 0.19/√n, 0.5/√n; four times that.
     */
    @Test
    void theDensityIsTriangular() {
        TpdfDither dither = new TpdfDither(42);
        int n = 200_000;
        double sum = 0;
        double squares = 0;
        int beyond = 0;
        for (int i = 0; i < n; i++) {
            double x = dither.nextSteps();
            assertTrue(Math.abs(x) < 1);
            sum += x;
            squares += x * x;
            beyond += Math.abs(x) > 1 - Math.sqrt(0.5) ? 1 : 0;
        }
        assertEquals(0, sum / n, 4 * 0.41 / Math.sqrt(n));
        assertEquals(1.0 / 6, squares / n, 4 * 0.19 / Math.sqrt(n));
        assertEquals(0.5, (double) beyond / n, 4 * 0.5 / Math.sqrt(n));
    }
}
