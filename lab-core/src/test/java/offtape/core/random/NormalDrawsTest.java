package offtape.core.random;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

/** Normal numbers against the theory of the normal distribution. */
class NormalDrawsTest {

    private static final int COUNT = 400_000;

    /** Of such a mean over many numbers one in 16 000 lies further off, in standard deviations. */
    private static final double FAR = 4;

    private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

    private final double[] draws = draws(20_260_101, COUNT);

    private static double[] draws(long seed, int count) {
        NormalDraws normal = new NormalDraws(new SplittableRandom(seed));
        double[] all = new double[count];
        Arrays.setAll(all, i -> normal.next());
        return all;
    }

    // Computed apart from this code with 50 digits: 64-bit mixing as published for splittable
    // generators (Steele, Lea, Flood 2014), its 53 highest bits, and the polar method's formula.
    @Test
    void sequenceIsThatOfTheFormula() {
        double[][] expected = {
            {1, 0.42945220538400686, 1.5857725335739927, 0.4564552075888475},
            {-7, -2.6056160064422444, -0.7167080822080064, 0.28470137411295965},
            {1L << 40, -1.946844619963178, 1.5715498472040663, 0.8649509162637882},
        };
        for (double[] row : expected) {
            double[] made = draws((long) row[0], 3);
            for (int i = 0; i < made.length; i++) {
                assertEquals(row[i + 1], made[i], 4 * Math.ulp(made[i]), "seed " + row[0]);
            }
        }
    }

    // Moments of the normal distribution: 0, 1, 0, 3. The mean of xᵏ over n numbers scatters by
    // √((E x²ᵏ − (E xᵏ)²)/n), with E x² = 1, E x⁴ = 3, E x⁶ = 15, E x⁸ = 105.
    @Test
    void momentsAreThoseOfTheDistribution() {
        assertMean(0, 1, x -> x);
        assertMean(1, 3 - 1, x -> x * x);
        assertMean(0, 15, x -> x * x * x);
        assertMean(3, 105 - 9, x -> x * x * x * x);
    }

    private void assertMean(double expected, double variance, DoubleUnaryOperator of) {
        double mean = Arrays.stream(draws).map(of).average().orElseThrow();
        assertEquals(expected, mean, FAR * Math.sqrt(variance / COUNT));
    }

    // Both numbers of a point are independent, and so are those of points that follow each other:
    // the mean of a product of two has variance 1/n.
    @Test
    void neighboursHaveNothingInCommon() {
        for (int apart = 1; apart <= 4; apart++) {
            double sum = 0;
            double squares = 0;
            for (int i = apart; i < COUNT; i++) {
                double product = draws[i] * draws[i - apart];
                sum += product;
                squares += (draws[i] * draws[i] - 1) * (draws[i - apart] * draws[i - apart] - 1);
            }
            double n = COUNT - apart;
            assertEquals(0, sum / n, FAR / Math.sqrt(n), "apart " + apart);
            // E (x² − 1)² = 2, so the product of two has variance 4
            assertEquals(0, squares / n, FAR * 2 / Math.sqrt(n), "squares apart " + apart);
        }
    }

    // Kolmogorov's limit: √n times the largest distance from the distribution exceeds 1.95 once in
    // a thousand times (2·exp(−2·1.95²) = 0.001).
    @Test
    void distributionIsNormal() {
        double[] sorted = draws.clone();
        Arrays.sort(sorted);
        double most = 0;
        for (int i = 0; i < COUNT; i++) {
            double theory = NORMAL.cumulativeProbability(sorted[i]);
            most = Math.max(most, Math.abs(theory - (double) i / COUNT));
            most = Math.max(most, Math.abs(theory - (i + 1.0) / COUNT));
        }
        assertTrue(Math.sqrt(COUNT) * most < 1.95, "distance " + most);
    }

    // 100 cells of equal probability: chi-squared of 99 degrees of freedom lies between 61.1 and
    // 148.2 in all but two of a thousand cases (tables of the distribution).
    @Test
    void cellsOfEqualProbabilityAreFilledAlike() {
        int cells = 100;
        double[] ends = new double[cells - 1];
        Arrays.setAll(ends, i -> NORMAL.inverseCumulativeProbability((i + 1.0) / cells));
        int[] found = new int[cells];
        for (double x : draws) {
            int at = Arrays.binarySearch(ends, x);
            found[at < 0 ? -at - 1 : at]++;
        }
        double expected = (double) COUNT / cells;
        double squared =
                Arrays.stream(found).mapToDouble(n -> (n - expected) * (n - expected)).sum();
        assertEquals((61.1 + 148.2) / 2, squared / expected, (148.2 - 61.1) / 2);
    }

    // Beyond 4 deviations lie 6.334e-5 of all (tables), 25.3 of 400 000, give or take 5.0.
    @Test
    void tailsAreThere() {
        long beyond = Arrays.stream(draws).filter(x -> Math.abs(x) > 4).count();
        assertEquals(25.3, beyond, FAR * 5.03);
        assertTrue(Arrays.stream(draws).allMatch(Double::isFinite));
    }
}
