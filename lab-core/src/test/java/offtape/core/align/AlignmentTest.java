package offtape.core.align;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class AlignmentTest {

    private static Alignment of(double start, double step, Double... gains) {
        return new Alignment(start, step, List.of(gains), -0.25, true);
    }

    @Test
    void exactIsWholeFramesAtNoDriftAndNoChangeOfLevel() {
        assertTrue(of(12, 1, 1.0, -1.0).isExact());
        assertFalse(of(12.5, 1, 1.0, -1.0).isExact());
        assertFalse(of(12, 1.000001, 1.0, -1.0).isExact());
        assertFalse(of(12, 1, 1.0, 0.999).isExact());
    }

    @Test
    void levelledKeepsAllButTheSizeOfGains() {
        assertEquals(of(12.5, 0.999, 1.0, -1.0), of(12.5, 0.999, 0.7, -3.0).levelled());
    }

    /** 1/0.9995 = 1.00050025: fast by 500.25 parts in a million. */
    @Test
    void shortStepsAreFast() {
        assertEquals(500.25, of(0, 0.9995, 1.0).fastPpm(), 0.001);
    }
}
