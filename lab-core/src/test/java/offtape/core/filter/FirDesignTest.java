package offtape.core.filter;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import offtape.core.filter.EqualiserBand.Kind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FirDesignTest {

    private static double wanted(double hz) {
        return new EqualiserBand(Kind.PEAK, 60, -5, 1.2).gainDb(hz)
                + new EqualiserBand(Kind.PEAK, 11_000, 9, 1.5).gainDb(hz)
                - new EqualiserBand(Kind.PEAK, 60, -5, 1.2).gainDb(1000)
                - new EqualiserBand(Kind.PEAK, 11_000, 9, 1.5).gainDb(1000);
    }

    @ParameterizedTest
    @ValueSource(ints = {8000, 44_100, 48_000, 96_000})
    void theFilterKeepsToTheWantedGainAtEveryRate(int rate) {
        FirFilter filter = FirDesign.minimumPhase(FirDesignTest::wanted, rate);
        // seen by a sum over the taps, not by the transform that chose their number
        for (double hz = FirDesign.FROM_HZ; hz < FirDesign.highestHz(rate); hz *= 1.2) {
            assertEquals(wanted(hz), filter.gainDb(hz), FirDesign.ERROR_DB, rate + " at " + hz);
        }
        assertEquals(0, filter.gainDb(1000), 1e-5);
        assertTrue(filter.taps().length < FirDesign.MOST_TAPS);
        assertTrue(filter.boundDb() >= filter.peakGainDb());
    }

    /** The first sample of a filter of minimum phase is the exponential of its mean log gain. */
    @Test
    void itHasMinimumPhase() {
        FirFilter filter = FirDesign.minimumPhase(FirDesignTest::wanted, 48_000);
        double sum = 0;
        int n = 1 << 16;
        for (int k = 0; k < n; k++) {
            sum += wanted(24_000.0 * (k + 0.5) / n);
        }
        assertEquals(sum / n, 20 * Math.log10(filter.taps()[0]), 0.02);
    }

    @Test
    void nothingToCorrectGivesAUnitImpulse() {
        double[] taps = FirDesign.minimumPhase(hz -> 0, 48_000).taps();
        assertEquals(1, taps[0], 1e-7);
        assertEquals(0, Arrays.stream(taps).skip(1).map(Math::abs).sum(), 1e-7);
    }

    /** 0.5 and 0.5 one apart: gain 1 at 0 Hz, 1/√2 at a quarter of the rate; bound 1. */
    @Test
    void gainAndBoundOfAMeanOfTwo() {
        FirFilter mean = new FirFilter(8000, new double[] {0.5, 0.5});
        assertEquals(0, mean.peakGainDb(), 1e-9);
        assertEquals(0, mean.boundDb(), 1e-9);
        assertEquals(20 * Math.log10(Math.sqrt(0.5)), mean.gainDb(2000), 1e-9);
    }

    @Test
    void otherRatesAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> FirDesign.minimumPhase(hz -> 0, 7999));
        assertThrows(
                IllegalArgumentException.class, () -> FirDesign.minimumPhase(hz -> 0, 384_001));
    }
}
