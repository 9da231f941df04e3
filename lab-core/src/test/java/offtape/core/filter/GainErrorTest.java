package offtape.core.filter;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import offtape.core.dsp.Spectrum;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A level gain of 6.02 dB, at points a hertz apart, held against what is wanted. */
class GainErrorTest {

    private static final int RATE = 8192;
    private static final double GAIN_DB = 20 * Math.log10(2);

    private static GainError error(DoubleUnaryOperator overDb, double fromHz, double toHz) {
        double[] re = new double[RATE / 2 + 1];
        Arrays.fill(re, 2);
        Spectrum level = Spectrum.of(RATE, re, new double[re.length]);
        return GainError.of(level, RATE, hz -> GAIN_DB - overDb.applyAsDouble(hz), fromHz, toHz);
    }

    /**
     * Two octaves are 97 points, both ends among them; an error at one of them alone counts once.
     */
    @ParameterizedTest
    @CsvSource({"500, -3", "500, 3", "1000, -3", "2000, 3", "2000, -3"})
    void oneWrongPointIsFound(double atHz, double byDb) {
        GainError found = error(hz -> Math.abs(hz - atHz) < 0.5 ? byDb : 0, 500, 2000);
        assertEquals(3, found.worstDb(), 1e-9);
        assertEquals(atHz, found.worstHz(), 1e-9);
        assertEquals(3 / Math.sqrt(97), found.rmsDb(), 1e-9);
        assertEquals(500, found.fromHz());
        assertEquals(2000, found.toHz());
    }

    /** The larger error counts whatever its sign, and every octave as much as another. */
    @Test
    void octavesCountAlike() {
        GainError found = error(hz -> hz < 999.5 ? 1 : -2, 500, 2000);
        assertEquals(2, found.worstDb(), 1e-9);
        assertEquals(1000, found.worstHz(), 1e-9);
        assertEquals(Math.sqrt((48 * 1 + 49 * 4) / 97.0), found.rmsDb(), 1e-9);
        assertEquals(500, error(hz -> 1, 500, 2000).worstHz(), 1e-9);
    }

    /** Nothing wrong lies, if anywhere, at the start. */
    @Test
    void noErrorIsZero() {
        GainError found = error(hz -> 0, 500, 2000);
        assertEquals(0, found.worstDb(), 1e-9);
        assertEquals(0, found.rmsDb(), 1e-9);
    }

    /** 0 Hz is never asked for: it has no place on a logarithm. The next point stands for it. */
    @Test
    void theLowestPointStandsForWhatLiesUnderIt() {
        GainError found =
                error(
                        hz -> {
                            assertTrue(hz >= 1, hz + " Hz");
                            return hz < 1.5 ? 4 : 0;
                        },
                        0.2,
                        100);
        assertEquals(4, found.worstDb(), 1e-9);
        assertEquals(1, found.worstHz(), 1e-9);
    }

    @Test
    void oneFrequencyIsOnePoint() {
        GainError found = error(hz -> -5, 700, 700);
        assertEquals(5, found.worstDb(), 1e-9);
        assertEquals(700, found.worstHz(), 1e-9);
        assertEquals(5, found.rmsDb(), 1e-9);
    }
}
