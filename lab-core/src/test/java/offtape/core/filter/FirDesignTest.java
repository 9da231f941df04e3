package offtape.core.filter;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import offtape.core.filter.EqualiserBand.Kind;
import offtape.core.standard.MinimumPhase;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
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

    @ParameterizedTest
    @CsvSource({"8000, 3600", "44100, 19845", "48000, 20000", "96000, 20000"})
    void itIsCheckedUpToTwentyKilohertzOrTheConvertersEdge(int rate, double hz) {
        assertEquals(hz, FirDesign.highestHz(rate), 1e-9);
    }

    /**
     * What needs nothing takes no more than the fewest taps; a narrow band of the bass takes more.
     */
    @Test
    void itIsAsShortAsItMayBe() {
        assertEquals(256, FirDesign.minimumPhase(hz -> 0, 48_000).taps().length);
        EqualiserBand narrow = new EqualiserBand(Kind.PEAK, 40, 6, 4);
        DoubleUnaryOperator wanted = hz -> narrow.gainDb(hz) - narrow.gainDb(1000);
        FirFilter filter = FirDesign.minimumPhase(wanted, 8000);
        int taps = filter.taps().length;
        assertEquals(taps, Integer.highestOneBit(taps));
        assertTrue(filter.errorFrom(wanted, 30, 3600).worstDb() <= FirDesign.ERROR_DB);
        // half of it, faded in the same way, would not do
        FirFilter half = new FirFilter(8000, faded(wanted, 8000, taps / 2));
        assertTrue(half.errorFrom(wanted, 30, 3600).worstDb() > FirDesign.ERROR_DB);
    }

    private static double[] faded(DoubleUnaryOperator wanted, int rate, int taps) {
        double[] whole = MinimumPhase.impulseResponse(wanted, rate, 1 << 15, 1 << 15);
        double[] h = Arrays.copyOf(whole, taps);
        for (int j = 0; j < taps / 4; j++) {
            h[taps - 1 - j] *= Math.pow(Math.sin(Math.PI / 2 * (j + 0.5) / (taps / 4)), 2);
        }
        return h;
    }

    /**
     * A step of 20 dB at 35 Hz cannot be followed: that takes all there is, 4 s at least, here
     * 32768 taps. The last quarter fades out as half a period of a cosine does.
     */
    @Test
    void whatCannotBeReachedTakesTheLongest() {
        DoubleUnaryOperator step = hz -> hz < 35 ? 20 : 0;
        FirFilter filter = FirDesign.minimumPhase(step, 8000);
        assertEquals(32_768, filter.taps().length);
        assertEquals(0, filter.gainDb(1000), 1e-5);
        double[] whole = MinimumPhase.impulseResponse(step, 8000, 1 << 15, 1 << 15);
        double unity = filter.taps()[0] / whole[0];
        double[] expected = faded(step, 8000, 1 << 15);
        for (int j : new int[] {1, 3000, 24_000, 25_000, 28_000, 31_000, 32_000}) {
            assertEquals(
                    unity * expected[j],
                    filter.taps()[j],
                    1e-6 * Math.abs(expected[j]) + 1e-12,
                    "tap " + j);
        }
    }

    /** Each tap is a number that a file of 32-bit float keeps exactly. */
    @Test
    void itIsJudgedAsItWillBeWritten() {
        for (double tap : FirDesign.minimumPhase(FirDesignTest::wanted, 8000).taps()) {
            assertEquals((float) tap, tap, 0);
        }
    }

    @Test
    void otherRatesAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> FirDesign.minimumPhase(hz -> 0, 7999));
        assertThrows(
                IllegalArgumentException.class, () -> FirDesign.minimumPhase(hz -> 0, 384_001));
    }
}
