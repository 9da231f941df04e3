package offtape.report.measure.line;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class StretchTest {

    /** 1001 samples at 50 Hz: 20.02 s, from −10 s to 10 s. */
    private static Stretch stretch() {
        return new Stretch(new double[1001], 50);
    }

    @Test
    void timeCountsFromTheMiddle() {
        assertEquals(20.02, stretch().seconds(), 1e-12);
        assertEquals(-10, stretch().at(0), 1e-12);
        assertEquals(0, stretch().at(500), 1e-12);
        assertEquals(10, stretch().at(1000), 1e-12);
    }

    /** Hann: 1 in the middle, a half at a quarter of the length, nothing at the ends. */
    @Test
    void theWindowIsThatOfHann() {
        Stretch s = stretch();
        assertEquals(1, s.window(0), 1e-12);
        assertEquals(0.5, s.window(20.02 / 4), 1e-12);
        assertEquals(0, s.window(-20.02 / 2), 1e-12);
        assertEquals(0.5 + 0.5 * Math.cos(2 * Math.PI * 10 / 20.02), s.windows()[0], 1e-12);
        assertEquals(1, s.windows()[500], 1e-12);
        assertEquals(1001 / 2.0, Arrays.stream(s.windows()).sum(), 1e-9, "½ on average");
    }

    /** Sample 700 lies 4 s after the middle, 3 · cos φ − 2 · sin φ there, φ = 2π · 1.7 · u. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.06, -0.06})
    void aLineIsTakenOutAndPutBack(double bend) {
        Stretch s = stretch();
        s.samples()[700] = 1;
        Line line = new Line(1.7, bend, 3, -2);
        s.subtract(line, 1);
        for (int i = 0; i <= 1000; i++) {
            double t = (i - 500) / 50.0;
            double phase = 2 * Math.PI * 1.7 * 2 * t / (1 + Math.sqrt(1 + bend * t));
            double rest = (i == 700 ? 1 : 0) - 3 * Math.cos(phase) + 2 * Math.sin(phase);
            assertEquals(rest, s.samples()[i], 1e-11, "sample " + i);
        }
        s.subtract(line, -1);
        double[] before = new double[1001];
        before[700] = 1;
        assertArrayEquals(before, s.samples(), 1e-12);
    }
}
