package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class TimeMapTest {

    /** Up to 10 s twice as long, then half as long: knots 0 → 3, 10 → 23, 20 → 28. */
    private final TimeMap map = new TimeMap(new double[] {0, 10, 20}, new double[] {3, 23, 28});

    @Test
    void straightLinesBetweenTheKnots() {
        assertEquals(13, map.recordingSeconds(5), 1e-12);
        assertEquals(23, map.recordingSeconds(10), 1e-12);
        assertEquals(24, map.recordingSeconds(12), 1e-12);
        assertEquals(0.5, map.speedRatio(5), 1e-12);
        assertEquals(2, map.speedRatio(15), 1e-12);
    }

    @Test
    void goesOnBeyondTheKnots() {
        assertEquals(-1, map.recordingSeconds(-2), 1e-12);
        assertEquals(33, map.recordingSeconds(30), 1e-12);
        assertEquals(0.5, map.speedRatio(-5), 1e-12);
        assertEquals(2, map.speedRatio(99), 1e-12);
    }

    @Test
    void thereAndBack() {
        for (double p = -7.3; p < 33; p += 0.37) {
            assertEquals(p, map.programmeSeconds(map.recordingSeconds(p)), 1e-12);
        }
    }

    @Test
    void straight() {
        TimeMap line = TimeMap.straight(-1.5, 1.02, 70);
        assertEquals(-1.5, line.recordingSeconds(0), 1e-12);
        assertEquals(-1.5 + 71.4, line.recordingSeconds(70), 1e-12);
        assertEquals(1 / 1.02, line.speedRatio(35), 1e-12);
    }

    @Test
    void isNotChangedByItsArrays() {
        double[] p = {0, 1};
        double[] r = {0, 1};
        TimeMap held = new TimeMap(p, r);
        Arrays.fill(r, 9);
        assertEquals(0.5, held.recordingSeconds(0.5), 1e-12);
    }

    @ParameterizedTest
    @MethodSource
    void refusesKnotsThatDoNotRise(double[] programme, double[] recording) {
        assertThrows(IllegalArgumentException.class, () -> new TimeMap(programme, recording));
    }

    static Stream<Arguments> refusesKnotsThatDoNotRise() {
        return Stream.of(
                Arguments.of(new double[] {0}, new double[] {0}),
                Arguments.of(new double[] {0, 1}, new double[] {0, 1, 2}),
                Arguments.of(new double[] {0, 0}, new double[] {0, 1}),
                Arguments.of(new double[] {0, 1}, new double[] {1, 1}),
                Arguments.of(new double[] {0, 1, 2}, new double[] {0, 2, 1}),
                Arguments.of(new double[] {0, Double.NaN}, new double[] {0, 1}),
                Arguments.of(new double[] {0, 1}, new double[] {0, Double.NaN}));
    }
}
