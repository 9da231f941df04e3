package offtape.core.transport;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import offtape.core.fault.UnusableInputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CaptureModeTest {

    @ParameterizedTest
    @CsvSource({
        "REFERENCE_TAPE, reference-tape",
        "TWO_PASS, two-pass",
        "OFF_TAPE, off-tape",
        "LOOPBACK, loopback",
    })
    void everyModeHasItsName(CaptureMode mode, String key) {
        assertEquals(key, mode.key());
        assertEquals(mode, CaptureMode.ofKey(key));
    }

    @ParameterizedTest
    @ValueSource(strings = {"OFF_TAPE", "off tape", ""})
    void otherNamesAreRefused(String key) {
        assertThrows(UnusableInputException.class, () -> CaptureMode.ofKey(key));
    }

    @Test
    void aRefusalNamesAllModes() {
        assertEquals(
                "\"mode\" must be one of reference-tape, two-pass, off-tape, loopback.",
                assertThrows(UnusableInputException.class, () -> CaptureMode.ofKey("three-pass"))
                        .getMessage());
    }
}
