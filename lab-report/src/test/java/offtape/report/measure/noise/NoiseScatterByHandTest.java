package offtape.report.measure.noise;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import offtape.core.dsp.PowerDensity;
import offtape.report.result.HumLine;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The scatter of noise whose density is flat, as a single pulse has it, in bins of 1 Hz. */
class NoiseScatterByHandTest {

    private static final int RATE = 1024;

    private static final DoubleUnaryOperator FLAT = f -> 1;

    private static double[] pulse() {
        double[] x = new double[RATE];
        x[RATE / 2] = 1;
        return x;
    }

    private static PowerDensity density(double[] x) {
        return PowerDensity.of(x, RATE, RATE);
    }

    private static NoiseScatter scatter(double seconds, HumLine... lines) {
        return new NoiseScatter(density(pulse()), seconds, List.of(lines));
    }

    /** 2·T·B: from 100 to 199 Hz lie a hundred bins, wherever between bins the band begins. */
    @ParameterizedTest
    @CsvSource({"100, 199, 100", "99.5, 199.5, 100", "100, 100, 1", "500, 9000, 12"})
    void whiteNoiseHasTwiceBandTimesLength(double fromHz, double toHz, int bins) {
        assertEquals(2 * 3 * bins, scatter(3).freedom(fromHz, toHz, f -> f < 512 ? 1 : 0), 1e-6);
    }

    /** Fifty bins of gain 1 and fifty of 2: 2·(50 + 100)²/(50 + 200) = 2·90 a second. */
    @Test
    void whatIsWeightedLessCountsLess() {
        assertEquals(180, scatter(1).freedom(100, 199, f -> f < 150 ? 1 : 2), 1e-6);
        assertEquals(0, scatter(1).freedom(100, 199, f -> 0));
        assertEquals(360, scatter(1).over(2).freedom(100, 199, f -> f < 150 ? 1 : 2), 1e-6);
    }

    /**
     * Bins of half a hertz: from 50 to 99.5 Hz lie a hundred, so 2·(100·½)²/(100·½) a second; of
     * gain 1 below 75 Hz and 2 from there 2·(25 + 50)²/(25 + 100) = 90. A line of 60 Hz is taken
     * out.
     */
    @Test
    void binsMayBeNarrower() {
        double[] x = pulse();
        for (int i = 0; i < x.length; i++) {
            x[i] += 0.1 * Math.sin(2 * Math.PI * 120 * i / RATE);
        }
        PowerDensity density = PowerDensity.of(x, RATE / 2.0, RATE);
        NoiseScatter scatter = new NoiseScatter(density, 1, List.of(new HumLine(60, -20, 0.1)));
        assertEquals(100, scatter.freedom(50, 99.5, FLAT), 0.5);
        assertEquals(90, scatter.freedom(50, 99.5, f -> f < 75 ? 1 : 2), 0.5);
    }

    /** A line of the mains is taken out of the density, with all that lies up to 3 bins beside. */
    @ParameterizedTest
    @CsvSource({"100, 100", "102, 100", "98, 100", "3, 2"})
    void linesDoNotScatter(int sineHz, double lineHz) {
        double[] x = pulse();
        for (int i = 0; i < x.length; i++) {
            x[i] += 0.1 * Math.sin(2 * Math.PI * sineHz * i / RATE);
        }
        NoiseScatter with = new NoiseScatter(density(x), 1, List.of(new HumLine(lineHz, -20, 0.1)));
        assertEquals(2 * 299, with.freedom(1, 299, FLAT), 3);
        NoiseScatter without = new NoiseScatter(density(x), 1, List.of());
        assertEquals(6, without.freedom(1, 299, FLAT), 4);
    }

    /**
     * Two degrees of freedom, an exponential distribution: in 2.275 % of the cases the power found
     * is under −ln 0.97725 = 0.023013 of the true one, which then is 10·lg(1/0.023013) = 16.38 dB
     * higher. Where the noise is half of the power only half of that distance counts, a ratio of 1
     * + (43.453 − 1)/2.
     */
    @Test
    void fewDegreesOfFreedomAreUncertain() {
        NoiseScatter scatter = scatter(0.01);
        double noise = density(pulse()).at(100) * 100;
        double most = -1 / Math.log(0.97725);
        assertEquals(10 * Math.log10(most), scatter.uncertaintyDb(100, 199, FLAT, noise), 1e-4);
        assertEquals(
                10 * Math.log10(1 + (most - 1) / 2),
                scatter.uncertaintyDb(100, 199, FLAT, 2 * noise),
                1e-4);
        assertEquals(10 * Math.log10(most), scatter.uncertaintyDb(100, 199, FLAT, noise / 2), 1e-4);
    }

    /** Less than one degree of freedom tells nothing, one does: χ² under it is (Φ⁻¹)². */
    @Test
    void lessThanOneDegreeTellsNothing() {
        double noise = density(pulse()).at(100) * 100;
        assertEquals(0, scatter(0.00499).uncertaintyDb(100, 199, FLAT, noise));
        // P(|z| < 0.028517) = 0.02275 for a normal z.
        assertEquals(
                -20 * Math.log10(0.028517),
                scatter(0.00500001).uncertaintyDb(100, 199, FLAT, noise),
                0.01);
    }

    /**
     * Eight half seconds, four of 1 and four of 1.2: s = √(8·0.01/7), over √8 0.0378, re the mean
     * of 1.1 and times Student's t(7) = 2.43 of 97.725 %.
     */
    @Test
    void theScatterOfAMeanIsSeenInItsBlocks() {
        double[] moving = new double[4 * RATE];
        Arrays.fill(moving, 0, 2 * RATE, 1);
        Arrays.fill(moving, 2 * RATE, 4 * RATE, 1.2);
        double expected = 20 * Math.log10(1 + 2.43 * 0.0378 / 1.1);
        assertEquals(expected, NoiseScatter.ofMeanDb(moving, RATE, 0), 0.01);
        assertEquals(2, NoiseScatter.ofMeanDb(moving, RATE, 2));
    }

    /** Three blocks tell it, two do not. */
    @ParameterizedTest
    @CsvSource({"1535, true", "1536, false"})
    void fewBlocksFallBack(int samples, boolean least) {
        double[] moving = new double[samples];
        Arrays.setAll(moving, i -> 1 + (double) i / RATE);
        assertEquals(least, NoiseScatter.ofMeanDb(moving, RATE, 0.5) == 0.5);
    }
}
