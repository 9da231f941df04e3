package offtape.core.unit;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** By hand, from the rule in words. */
class DigitsTest {

    @ParameterizedTest
    @CsvSource({
        // two digits where the first is 1 or 2 …
        "0.12, 2",
        "0.0234, 3",
        "1.5, 1",
        "17, 0",
        "250, -1",
        // … but not for a nought, nor where it is more
        "0.2, 1",
        "0.204, 1",
        "0.3, 1",
        "0.0054, 3",
        "37, -1",
        // rounding comes first: 0.0996 is 0.10, and that is one digit
        "0.0996, 1",
        "0.296, 1",
        "0.00001, 4",
        "0, 4"
    })
    void decimalsFollowTheUncertainty(double uncertainty, int decimals) {
        assertEquals(decimals, Digits.decimals(uncertainty));
    }

    @ParameterizedTest
    @CsvSource({"0.29984, 3, 0.300", "6563.2, -1, 6560", "-0.00004, 4, 0.0000", "2.5, 0, 3"})
    void valuesEndThere(double value, int decimals, String text) {
        assertEquals(text, Digits.rounded(value, decimals).toPlainString());
    }
}
