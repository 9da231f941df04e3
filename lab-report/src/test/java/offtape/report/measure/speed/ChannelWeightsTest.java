package offtape.report.measure.speed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import offtape.core.dsp.Baseband;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The band is 200 Hz wide, so noise is read from 80 to 180 Hz. A level that fluctuates there as a
 * sine of peak a about 1 has the mean density a²/2 / 100 Hz: 5e-5 for 0.1.
 */
class ChannelWeightsTest {

    private static final ToneBand BAND = new ToneBand(200, 340);

    private static Baseband fluctuating(double level, double peak, double hz) {
        double[] re = new double[2000];
        double[] im = new double[2000];
        Arrays.setAll(re, k -> 0.6 * level * (1 + peak * Math.sin(2 * Math.PI * hz * k / 1000)));
        Arrays.setAll(im, k -> re[k] / 0.6 * 0.8);
        return new Baseband(re, im, 1000, 0);
    }

    private static Baseband noisy(double peak) {
        return fluctuating(0.3, peak, 130);
    }

    private static Baseband silent() {
        return new Baseband(new double[2000], new double[2000], 1000, 0);
    }

    private static ChannelWeights settled(Baseband... channels) {
        ChannelWeights weights = new ChannelWeights(channels.length, BAND);
        weights.settle(List.of(List.of(channels)));
        return weights;
    }

    @Test
    void piecesToWeighByAreSpreadEvenly() {
        assertEquals(List.of(0, 1, 2), ChannelWeights.spots(3));
        List<Integer> spots = ChannelWeights.spots(48);
        assertEquals(32, spots.size());
        assertEquals(List.of(0, 1, 3, 4, 6), spots.subList(0, 5));
        assertEquals(46, spots.get(31));
    }

    /** Twice the fluctuation has four times the power and counts a quarter. */
    @ParameterizedTest
    @CsvSource({"0.1, 2e4", "0.2, 5e3", "0.02, 5e5"})
    void aChannelCountsByTheInverseOfItsNoise(double peak, double weight) {
        assertEquals(weight, settled(noisy(peak)).of(0), 1e-3 * weight);
        assertEquals(weight, settled(fluctuating(8, peak, 130)).of(0), 1e-3 * weight);
    }

    /** A tone without any noise counts for much, not for infinitely much. */
    @Test
    void aPerfectToneHasAWeight() {
        double weight = settled(noisy(0)).of(0);
        assertTrue(weight > 1e12 && Double.isFinite(weight), "weight " + weight);
    }

    /** 3e-4 is the density of a fluctuation by √(2 · 100 · 3e-4) = 0.245. */
    @Test
    void whatIsTooNoisyForAToneDoesNotCount() {
        ChannelWeights weights = settled(noisy(0.244), noisy(0.246), silent());
        assertEquals(1 / (0.244 * 0.244 / 200), weights.of(0), 10);
        assertEquals(0, weights.of(1));
        assertEquals(0, weights.of(2));
        assertEquals(weights.of(0), weights.sum());
        assertFalse(weights.areAllZero());
        assertTrue(settled(noisy(0.25), silent()).areAllZero());
        assertEquals(7e4, settled(noisy(0.1), noisy(0.0632456)).sum(), 100);
    }

    /** Amplitude modulation slower than 80 Hz is no noise, nor what the filter lets through. */
    @ParameterizedTest
    @CsvSource({"70", "190"})
    void whatLiesOutsideTheBandIsNoNoise(double hz) {
        assertTrue(settled(fluctuating(1, 0.2, hz)).of(0) > 1e8);
    }

    /** Both ends of the band count: 0.4 and 0.9 of it. */
    @ParameterizedTest
    @CsvSource({"84", "176"})
    void whatLiesInsideTheBandIsNoise(double hz) {
        assertEquals(2e4, settled(fluctuating(1, 0.1, hz)).of(0), 200);
    }

    @Test
    void ofSeveralPiecesTheMedianCounts() {
        ChannelWeights weights = new ChannelWeights(1, BAND);
        weights.settle(List.of(List.of(noisy(0.1)), List.of(noisy(0.2)), List.of(noisy(0.02))));
        assertEquals(2e4, weights.of(0), 20);
    }

    /**
     * Two channels of densities 5e-5 and 2e-6, weights 2e4 and 5e5: together Σw²·S / (Σw)², which
     * is 1/Σw as long as each has the noise it was weighed by.
     */
    @Test
    void noiseOfTheChannelsAddsAsTheyAreWeighed() {
        ChannelWeights weights = settled(noisy(0.1), noisy(0.02));
        assertTrue(weights.note(0, noisy(0.1), true));
        assertTrue(weights.note(1, noisy(0.02), true));
        assertEquals(1 / 5.2e5, weights.noiseDensity(), 1e-3 / 5.2e5);
        // The second one's next piece has four times the noise: 2e-6 · (1 + 4)/2 on the mean.
        assertTrue(weights.note(1, noisy(0.04), true));
        double expected = (2e4 * 2e4 * 5e-5 + 5e5 * 5e5 * 5e-6) / (5.2e5 * 5.2e5);
        assertEquals(expected, weights.noiseDensity(), 1e-3 * expected);
    }

    /** A dropout or a click shakes the level too; what has one counts only if all have. */
    @Test
    void clearPiecesTellTheNoise() {
        ChannelWeights weights = settled(noisy(0.1));
        weights.note(0, noisy(0.2), false);
        assertEquals(2e-4, weights.noiseDensity(), 2e-7);
        weights.note(0, noisy(0.1), true);
        assertEquals(5e-5, weights.noiseDensity(), 5e-8);
    }

    @Test
    void aPieceWithoutAToneIsNotNoted() {
        ChannelWeights weights = settled(noisy(0.1), noisy(0.02));
        assertTrue(weights.note(0, noisy(0.1), true));
        assertFalse(weights.note(0, noisy(0.25), true));
        assertFalse(weights.note(1, silent(), true));
        double expected = 2e4 * 2e4 * 5e-5 / (5.2e5 * 5.2e5);
        assertEquals(expected, weights.noiseDensity(), 1e-3 * expected);
    }
}
