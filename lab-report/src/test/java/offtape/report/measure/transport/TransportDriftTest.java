package offtape.report.measure.transport;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import offtape.core.unit.Quantity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Heads 0.1 s apart, known to 1 ms; tones of 20 s unless said otherwise. */
class TransportDriftTest {

    private static final HeadDelay DELAY = new HeadDelay(0.1, 0.001, "Given.", null);

    /**
     * A tenth of the figure, its share 2σ/τ = 0.02, 0.0005 % and what may be steady: a constant of
     * 1e-5 % is 1e-4 % a second, so 0.002 % in 20 s, of either sign.
     */
    @ParameterizedTest
    @CsvSource({"0, 0.0065", "1e-5, 0.0085", "-1e-5, 0.0085"})
    void itIsAsUncertainAsDelayAndClocksMakeIt(double mean, double uncertainty) {
        Quantity drift = TransportDrift.of(0.05, DELAY, 20, mean);
        assertEquals(0.05, drift.value(), 0);
        assertEquals("%", drift.unit());
        assertEquals(uncertainty, drift.uncertainty(), 1e-12);
    }

    /** A steady drift that may be there and is larger than 0.02 % and than the figure hides it. */
    @ParameterizedTest
    @CsvSource({
        "0.01, 0.99e-4, 1",
        "0.01, 1.01e-4, 0",
        "0.01, -1.01e-4, 0",
        "0.05, 2.49e-4, 1",
        "0.05, 2.51e-4, 0",
    })
    void clocksMayHideIt(double value, double mean, int told) {
        Quantity drift = TransportDrift.of(value, DELAY, 20, mean);
        assertEquals(told == 1, drift.isKnown());
        assertTrue(told == 1 || drift.reason().startsWith("Two sample clocks"), drift.reason());
    }

    @Test
    void fifteenSecondsTellDriftFromWow() {
        assertTrue(TransportDrift.of(0.05, DELAY, 15, 0).isKnown());
        Quantity tooShort = TransportDrift.of(0.05, DELAY, 14.99, 0);
        assertFalse(tooShort.isKnown());
        assertEquals("The tone is too short to tell drift from wow.", tooShort.reason());
    }
}
