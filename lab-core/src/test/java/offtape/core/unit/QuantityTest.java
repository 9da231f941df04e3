package offtape.core.unit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class QuantityTest {

    @Test
    void isEitherKnownOrUnknown() {
        Quantity known = Quantity.known(0.112, "%", 0.004);
        assertTrue(known.isKnown());
        assertEquals(0.112, known.value());
        assertEquals("%", known.unit());
        assertEquals(0.004, known.uncertainty());
        assertNull(known.reason());
        Quantity unknown = Quantity.unknown("The mean cancels.");
        assertFalse(unknown.isKnown());
        assertNull(unknown.value());
        assertEquals("The mean cancels.", unknown.reason());
        assertEquals(0, Quantity.known(1, "dB", 0).uncertainty());
    }

    @ParameterizedTest
    @MethodSource
    void refusesHalves(Executable made) {
        assertThrows(IllegalArgumentException.class, made);
    }

    static Stream<Executable> refusesHalves() {
        return Stream.of(
                () -> Quantity.known(Double.NaN, "%", 0.1),
                () -> Quantity.known(Double.POSITIVE_INFINITY, "%", 0.1),
                () -> Quantity.known(Double.NEGATIVE_INFINITY, "%", 0.1),
                () -> Quantity.known(1, "%", Double.NaN),
                () -> Quantity.known(1, "%", Double.POSITIVE_INFINITY),
                () -> Quantity.known(1, "%", -0.1),
                () -> Quantity.known(1, null, 0.1),
                () -> Quantity.unknown(null),
                () -> Quantity.unknown(" "),
                () -> new Quantity(1.0, "%", null, null),
                () -> new Quantity(1.0, "%", 0.1, "but"),
                () -> new Quantity(null, "%", null, "why"),
                () -> new Quantity(null, null, 0.1, "why"));
    }
}
