package offtape.core.standard;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import offtape.reference.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TimeConstantsTest {

    @Test
    void thePairIsReadAndWritten() {
        assertEquals(new TimeConstants(3180, 50), TimeConstants.parse(" 3180, 50 "));
        assertEquals("3180,50", TimeConstants.parse("3180,50").toString());
        assertEquals("none,17.5", TimeConstants.parse("17.5").toString());
        assertEquals(TimeConstants.parse("none,70"), TimeConstants.parse("70"));
        assertEquals("3180 and 50 µs", TimeConstants.parse("3180,50").words());
        assertEquals("70 µs", TimeConstants.parse("70").words());
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "flat", "50,3180", "3180/50", "3180,50,7", "-3,50", "0", "none"})
    void anythingElseIsRefused(String text) {
        assertThrows(IllegalArgumentException.class, () -> TimeConstants.parse(text));
    }

    /**
     * 1/(2π·50 Hz) = 3183 µs, so the lows of 3180 µs stand 3.01 dB over a flat line at 50 Hz, of
     * which 0.011 dB are there at 1 kHz too: (ωτ)⁻² = 0.0025. The highs add 10·lg 1.0987 = 0.409 dB
     * re 1 kHz.
     */
    @Test
    @Source("IEC 60094-1:1981 clause 15, the formula of the flux")
    void atTheTurningFrequencyTheFluxIsUpByThreeDecibels() {
        assertEquals(
                3.014 - 0.011 + 0.409 - 0.001, TimeConstants.parse("3180,50").fluxDb(50), 0.003);
    }
}
