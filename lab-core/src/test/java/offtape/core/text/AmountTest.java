package offtape.core.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class AmountTest {

    @ParameterizedTest
    @ValueSource(
            strings = {"1.5 dB", "−0.3 %", "+6.4\u00a0dB", "19.05 cm/s", "12", "1.5 dB ± 0.3 dB"})
    void numbersAndUnitsAreAmounts(String text) {
        assertTrue(Amount.is(text));
    }

    @ParameterizedTest
    @ValueSource(strings = {"dB", "take 1.5", "1.5.wav", "2 heads", "", "–  x"})
    void namesAreNone(String text) {
        assertFalse(Amount.is(text));
    }

    @Test
    void theDecimalSignIsTheLanguages() {
        assertEquals("19,05 cm/s (7,5 in/s)", Amount.in(Language.GERMAN, "19.05 cm/s (7.5 in/s)"));
        assertEquals("19.05 cm/s", Amount.in(Language.ENGLISH, "19.05 cm/s"));
    }
}
