package offtape.reference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;

class TransportMotionTest {

    static final List<String> MOTIONS = TransportMotion.NAMES;

    @ParameterizedTest
    @FieldSource("MOTIONS")
    @Source("recorded motion, motion/README.md: five seconds, 100 values a second")
    void isEvenlySampledAndAboutItsMean(String name) {
        TransportMotion motion = TransportMotion.load(name);
        double[] t = motion.seconds();
        assertEquals(500, t.length);
        for (int i = 1; i < t.length; i++) {
            assertEquals(0.01, t[i] - t[i - 1], 1e-9);
        }
        double sum = 0;
        double squares = 0;
        for (double late : motion.lateMicroseconds()) {
            sum += late;
            squares += late * late;
        }
        // The mean was taken out before rounding to 0.001 us and cutting to five seconds.
        assertTrue(Math.abs(sum / t.length) < 0.01 * Math.sqrt(squares / t.length));
    }

    @Test
    void refusesUnknownNames() {
        assertThrows(IllegalArgumentException.class, () -> TransportMotion.load("transport-z"));
    }
}
