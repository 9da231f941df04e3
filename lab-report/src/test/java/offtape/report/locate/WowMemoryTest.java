package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Steady wow over tones of usual and of great length. */
class WowMemoryTest {

    /**
     * Lateness a·sin(2πft) changes over d seconds by 2a·sin(πfd)·cos(…), in the mean square by
     * 2a²·sin²(πfd): 2a² over half a turn, a² over a quarter, nothing over a whole one. Two hours
     * at a hundred values a second have to do with the memory of ten minutes.
     */
    @ParameterizedTest
    @ValueSource(ints = {60, 7200})
    void aLineIsRememberedAsItSwings(int seconds) {
        double a = 1e-4;
        double[] late = new double[100 * seconds];
        Arrays.setAll(late, i -> a * Math.sin(2 * Math.PI * 0.5 * 0.01 * i));
        WowMemory memory = WowMemory.of(new TonePhase.Course(3, 0.01, late, 1e-7));
        assertEquals(2, memory.variance(1) / (a * a), 0.01);
        assertEquals(1, memory.variance(0.5) / (a * a), 0.01);
        assertEquals(0, memory.variance(2) / (a * a), 0.01);
    }
}
