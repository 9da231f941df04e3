package offtape.core.filter;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FirFilterTest {

    private static final int RATE = 8000;

    private static FirFilter filter(double... taps) {
        return new FirFilter(RATE, taps);
    }

    /**
     * 1 − z⁻² is 1 − 1 = 0 at 0 Hz, 1 + j at an eighth of the rate, 2 at a quarter, 1 − j at three
     * eighths; 1 + ½·z⁻¹ is 1 − j/2 at a quarter.
     */
    @Test
    void theGainIsThatOfTheSumOverTaps() {
        FirFilter comb = filter(1, 0, -1);
        assertEquals(Double.NEGATIVE_INFINITY, comb.gainDb(0));
        assertEquals(10 * Math.log10(2), comb.gainDb(1000), 1e-9);
        assertEquals(10 * Math.log10(4), comb.gainDb(2000), 1e-9);
        assertEquals(10 * Math.log10(2), comb.gainDb(3000), 1e-9);
        assertEquals(10 * Math.log10(1.25), filter(1, 0.5).gainDb(2000), 1e-9);
    }

    /** The largest gain wherever it lies: at 0 Hz, within, at half the rate. */
    @Test
    void thePeakIsTheLargestGain() {
        assertEquals(20 * Math.log10(1.5), filter(1, 0.5).peakGainDb(), 1e-9);
        assertEquals(20 * Math.log10(2), filter(1, 0, -1).peakGainDb(), 1e-9);
        assertEquals(20 * Math.log10(1.5), filter(1, -0.5).peakGainDb(), 1e-9);
        assertEquals(20 * Math.log10(0.1), filter(0.1).peakGainDb(), 1e-9);
    }

    /**
     * 64 samples of a cosine that lies halfway between two frequencies that 64 points tell apart,
     * where they would see 20·lg (2/π) = 3.9 dB less of its peak of about 32.
     */
    @Test
    void noPeakFallsBetweenThePointsLookedAt() {
        double[] taps = new double[64];
        double hz = 8000 * 10.5 / 64;
        for (int j = 0; j < taps.length; j++) {
            taps[j] = Math.cos(2 * Math.PI * hz * j / RATE);
        }
        assertEquals(20 * Math.log10(32), filter(taps).peakGainDb(), 0.1);
    }

    /** 0.5 + 1.5 + 2: a sound that is ±1 with the signs of the taps reaches it. */
    @Test
    void theBoundIsTheSumOfMagnitudes() {
        assertEquals(20 * Math.log10(4), filter(0.5, -1.5, 2).boundDb(), 1e-9);
    }

    @Test
    void asFloatsIsWhatAFileKeeps() {
        FirFilter kept = filter(0.1, -1.0 / 3, 1).asFloats();
        assertArrayEquals(new double[] {0.1f, -1f / 3, 1}, kept.taps());
        assertEquals(RATE, kept.sampleRateHz());
    }

    /**
     * Looked at on a grid of a hertz or finer (8000/8192), or of half the frequencies that the taps
     * tell apart (8000/16384 for 6000 of them).
     */
    @ParameterizedTest
    @CsvSource({"1, 8192", "6000, 16384"})
    void theErrorIsLookedAtFinely(int taps, int points) {
        double[] impulse = new double[taps];
        impulse[0] = 2;
        List<Double> asked = new ArrayList<>();
        GainError error =
                filter(impulse)
                        .errorFrom(
                                hz -> {
                                    asked.add(hz);
                                    return 0;
                                },
                                30,
                                60);
        assertEquals(20 * Math.log10(2), error.worstDb(), 1e-9);
        assertEquals(49, asked.size(), "48 an octave, both ends");
        double step = (double) RATE / points;
        boolean odd = false;
        for (int i = 0; i < asked.size(); i++) {
            double near = 30 * Math.pow(2, i / 48.0);
            assertEquals(near, asked.get(i), step / 2 + 1e-9);
            odd |= Math.round(asked.get(i) / step) % 2 == 1;
            assertEquals(0, Math.IEEEremainder(asked.get(i), step), 1e-9);
        }
        assertTrue(odd, "all of the grid's points are used");
    }
}
