package offtape.report.measure.noise;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import offtape.core.dsp.PowerDensity;
import offtape.report.result.HumLine;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@Tag("study")
class NoiseScatterTest {

    private static final int RATE = 48_000;

    /**
     * White noise in a band B over T: ν = 2·B·T. The density itself scatters by 1/√pieces, which
     * makes ∫G² larger by 1/pieces: for 2 s and transforms of 16384 at 4.86 overlapping pieces with
     * Hann's 1/(1 + 2/36) a fifth to a quarter.
     */
    @Test
    void whiteNoiseHasTwiceBandTimesLength() {
        NoiseScatter scatter = scatter(noise(2, 1));
        assertEquals(2 * 1000 * 2, scatter.freedom(5000, 6000, f -> 1), 0.27 * 4000);
    }

    /**
     * The power of 300 stretches of noise in a narrow band lies within the uncertainty that each
     * states in 93 % of the cases or more, where 95 % are promised and 1.3 % is the scatter of such
     * a count.
     */
    @ParameterizedTest
    @CsvSource({"100, 150", "1000, 3000", "20, 20000"})
    void theUncertaintyHolds(double fromHz, double toHz) {
        int held = 0;
        double widest = 0;
        for (int seed = 0; seed < 300; seed++) {
            PowerDensity density = PowerDensity.of(noise(0.6, seed), RATE, 1 << 13);
            NoiseScatter scatter = new NoiseScatter(density, 0.6, List.of());
            double power = density.power(fromHz, toHz, f -> 1);
            double truth = 1e-6 * (toHz - fromHz) / (RATE / 2.0);
            double u = scatter.uncertaintyDb(fromHz, toHz, f -> 1, power);
            widest = Math.max(widest, u);
            held += Math.abs(10 * Math.log10(power / truth)) <= u ? 1 : 0;
        }
        System.out.printf(
                "%.0f to %.0f Hz: %d of 300 within, at most ±%.2f dB%n",
                fromHz, toHz, held, widest);
        assertTrue(held >= 279, held + " of 300");
    }

    /**
     * A line a hundred times stronger than the noise does not scatter: 1 % of the noise's share.
     */
    @Test
    void steadyLinesDoNotScatter() {
        double[] x = noise(2, 4);
        double peak = Math.sqrt(2 * 100 * 1e-6);
        for (int i = 0; i < x.length; i++) {
            x[i] += peak * Math.sin(2 * Math.PI * 100 * i / RATE);
        }
        PowerDensity density = PowerDensity.of(x, RATE, 1 << 14);
        DoubleUnaryOperator flat = f -> 1;
        double power = density.power(20, 20_000, flat);
        NoiseScatter with = new NoiseScatter(density, 2, List.of(new HumLine(100, 0, 0)));
        assertTrue(with.uncertaintyDb(20, 20_000, flat, power) < 0.002);
        NoiseScatter without = new NoiseScatter(density, 2, List.of());
        assertTrue(without.uncertaintyDb(20, 20_000, flat, power) > 0.5);
    }

    /** Readings that do not move have no scatter; those of few blocks fall back. */
    @Test
    void theScatterOfAMeanIsSeenInItsBlocks() {
        double[] still = IntStream.range(0, 4 * RATE).mapToDouble(i -> 2).toArray();
        assertEquals(0.02, NoiseScatter.ofMeanDb(still, RATE, 0.02), 0);
        double[] moving =
                IntStream.range(0, 4 * RATE).mapToDouble(i -> i < 2 * RATE ? 1 : 1.2).toArray();
        // Eight blocks, 1 and 1.2: s = √(8·0.01/7), /√8 = 0.0378, re 1.1 and times t(7) = 2.43.
        double expected = 20 * Math.log10(1 + 2.43 * 0.0378 / 1.1);
        assertEquals(expected, NoiseScatter.ofMeanDb(moving, RATE, 0), 0.01);
        assertEquals(0.5, NoiseScatter.ofMeanDb(new double[RATE], RATE, 0.5), 0);
    }

    private static NoiseScatter scatter(double[] x) {
        return new NoiseScatter(
                PowerDensity.of(x, RATE, 1 << 14), (double) x.length / RATE, List.of());
    }

    private static double[] noise(double seconds, long seed) {
        Random random = new Random(seed);
        return IntStream.range(0, (int) (seconds * RATE))
                .mapToDouble(i -> 1e-3 * random.nextGaussian())
                .toArray();
    }
}
