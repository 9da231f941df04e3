package offtape.report.measure.distortion;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HarmonicReadingTest {

    /** A line of amplitude 3 in noise of power 1, found as 10, re a fundamental of amplitude 10. */
    @Test
    void noiseIsTakenOut() {
        HarmonicReading reading = HarmonicReading.of(10, 1, 1, 100);
        assertEquals(0.3, reading.ratio(), 1e-12);
        assertNull(reading.below());
    }

    /**
     * Noise alone exceeds t times its mean with probability exp(−t): one in twenty at ln 20 =
     * 2.996.
     */
    @Test
    void whatNoiseAloneWouldShowIsNotTold() {
        assertNull(HarmonicReading.of(2.99, 1, 1, 100).ratio());
        assertEquals(Math.sqrt(0.02), HarmonicReading.of(3, 1, 1, 100).ratio(), 1e-12);
    }

    /**
     * The first terms by hand: at noncentrality 0 the distribution is 1 − exp(−x/2); for 2 degrees
     * of freedom and noncentrality 2, Σ exp(−1)/j!·P(1 + j, x/2), where P(1) = 1 − e^−h and P(k +
     * 1) = P(k) − e^−h·h^k/k!.
     */
    @Test
    void theNoncentralDistributionIsRight() {
        assertEquals(1 - Math.exp(-1.5), HarmonicReading.noncentral(3, 1, 0), 1e-14);
        double h = 1.5;
        double p = 1 - Math.exp(-h);
        double term = 1;
        double factorial = 1;
        double sum = 0;
        for (int j = 0; j < 30; j++) {
            sum += Math.exp(-1) / factorial * p;
            term *= h / (j + 1);
            p -= Math.exp(-h) * term;
            factorial *= j + 1;
        }
        assertEquals(sum, HarmonicReading.noncentral(3, 1, 2), 1e-12);
    }

    /**
     * Two lines have χ² of four degrees of freedom, which exceeds x with probability exp(−x/2)·(1 +
     * x/2): one in twenty at x = 9.4877, a power of 4.744 times the noise of one line. The noise of
     * both is taken out.
     */
    @Test
    void theNoiseOfAllLinesCounts() {
        assertNull(HarmonicReading.of(4.74, 1, 2, 100).ratio());
        assertEquals(Math.sqrt(0.0275), HarmonicReading.of(4.75, 1, 2, 100).ratio(), 1e-12);
    }

    /** Where there is no noise at all, even nothing is told. */
    @Test
    void withoutNoiseNothingIsHidden() {
        assertEquals(0, HarmonicReading.of(0, 0, 1, 1).ratio());
        assertEquals(1e-9, HarmonicReading.of(1e-18, 0, 1, 1).ratio(), 1e-20);
    }

    /**
     * The bound is the amplitude A at which noise of mean power 1 leaves no more than the power
     * found in one case of twenty: ∫ exp(−|z − A|²)/π over the disc |z|² ≤ 2, in rings and sectors.
     * Noise of four times the power beside a fundamental of 3² scales it by 2/3.
     */
    @Test
    void theBoundIsThatOfOneInTwenty() {
        double bound = HarmonicReading.of(2, 1, 1, 1).below();
        assertEquals(0.05, chanceWithin(Math.sqrt(2), bound), 1e-4);
        assertEquals(bound * 2 / 3, HarmonicReading.of(8, 4, 1, 9).below(), 1e-6);
    }

    private static double chanceWithin(double radius, double amplitude) {
        int rings = 400;
        int sectors = 400;
        double sum = 0;
        for (int i = 0; i < rings; i++) {
            double r = radius * (i + 0.5) / rings;
            for (int j = 0; j < sectors; j++) {
                double re = r * Math.cos(2 * Math.PI * (j + 0.5) / sectors) - amplitude;
                double im = r * Math.sin(2 * Math.PI * (j + 0.5) / sectors);
                sum += r * Math.exp(-re * re - im * im);
            }
        }
        return sum / Math.PI * radius / rings * 2 * Math.PI / sectors;
    }

    /**
     * Of 2000 draws of a line in noise at least 95 % have the true amplitude under the bound, or
     * told. 0.7 % is one and a half deviations of such a count.
     */
    @ParameterizedTest
    @CsvSource({"1, 1", "2, 9"})
    void theBoundHolds(double amplitude, int lines) {
        Random random = new Random(3);
        int held = 0;
        for (int draw = 0; draw < 2000; draw++) {
            double power = 0;
            for (int line = 0; line < lines; line++) {
                double re = (line == 0 ? amplitude : 0) + random.nextGaussian() / Math.sqrt(2);
                double im = random.nextGaussian() / Math.sqrt(2);
                power += re * re + im * im;
            }
            HarmonicReading reading = HarmonicReading.of(power, 1, lines, 1);
            held += reading.below() == null || reading.below() > amplitude ? 1 : 0;
        }
        System.out.printf("bound on %.1f in %d lines held in %d of 2000%n", amplitude, lines, held);
        assertTrue(held >= 2000 * 0.943, held + " of 2000");
    }

    @Tag("study")
    @ParameterizedTest
    @CsvSource({"0.3, 1", "1.5, 1", "2, 1", "0.5, 9"})
    void theBoundHoldsForOtherLines(double amplitude, int lines) {
        theBoundHolds(amplitude, lines);
    }

    /**
     * No lucky draw promises more than the noise allows: nothing found is bounded as its median.
     */
    @Test
    void theBoundIsNotBetterThanTheNoise() {
        double nothing = HarmonicReading.of(0, 1, 1, 1).below();
        assertEquals(HarmonicReading.of(Math.log(2), 1, 1, 1).below(), nothing, 1e-6);
        assertTrue(nothing > 1, "bound " + nothing);
    }
}
