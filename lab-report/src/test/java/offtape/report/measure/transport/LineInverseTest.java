package offtape.report.measure.transport;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import offtape.report.measure.line.FoundLine;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Lines so small that the delay does not waver, 10 s at 500 Hz, heads 0.1 s apart. */
class LineInverseTest {

    private static final double RATE = 500;
    private static final int COUNT = 5000;
    private static final double DELAY_S = 0.1;
    private static final double SMALL = 1e-6;

    private static double time(int i) {
        return (i - (COUNT - 1) / 2.0) / RATE;
    }

    private static FoundLine steady(double hz) {
        return new FoundLine(hz, hz, 0.001, SMALL, 1e-9, 0, 0);
    }

    /** a·cos(2πft) + b·sin(2πft), now less what it was one delay before. */
    private static double heard(double hz, double a, double b, double t) {
        return own(hz, a, b, t) - own(hz, a, b, t - DELAY_S);
    }

    private static double own(double hz, double a, double b, double t) {
        double turn = 2 * Math.PI * hz * t;
        return a * Math.cos(turn) + b * Math.sin(turn);
    }

    private static double[] values(java.util.function.DoubleUnaryOperator f) {
        double[] x = new double[COUNT];
        Arrays.setAll(x, i -> SMALL * f.applyAsDouble(time(i)));
        return x;
    }

    private static LineInverse of(double[] x, Comb comb) {
        return new LineInverse(x, RATE, comb, HeardLag.of(x, RATE, DELAY_S));
    }

    private static void assertSame(double[] expected, double[] actual) {
        for (int i = 0; i < COUNT; i++) {
            assertEquals(expected[i], actual[i], 1e-5 * SMALL, "value " + i);
        }
    }

    @Test
    void twoLinesAreFoundTogether() {
        double[] x = values(t -> heard(3.2, 0.6, -0.8, t) + heard(8.7, -0.1, 0.3, t));
        LineInverse inverse = of(x, new Comb(DELAY_S, 1e-5));
        List<UndoneLine> lines = inverse.undo(List.of(steady(3.2), steady(8.7)));
        assertEquals(2, lines.size());
        assertEquals(0.6 * SMALL, lines.get(0).cos(), 1e-5 * SMALL);
        assertEquals(-0.8 * SMALL, lines.get(0).sin(), 1e-5 * SMALL);
        assertEquals(-0.1 * SMALL, lines.get(1).cos(), 1e-5 * SMALL);
        assertEquals(0.3 * SMALL, lines.get(1).sin(), 1e-5 * SMALL);
        assertEquals(2 * Math.sin(Math.PI * 0.32), lines.get(0).gain(), 1e-12);
        assertEquals(2 * Math.sin(Math.PI * 0.87), lines.get(1).gain(), 1e-12);
        assertSame(x, inverse.heard(lines));
        assertSame(
                values(t -> own(3.2, 0.6, -0.8, t) + own(8.7, -0.1, 0.3, t)), inverse.own(lines));
    }

    /**
     * A reel from 2.1 to 1.9 Hz: f = f₀/√(1 + b·t), turns 2·f₀/b·(√(1 + b·t) − 1), with (1 +
     * 5·b)/(1 − 5·b) = (2.1/1.9)².
     */
    @Test
    void aMovingLineIsFollowed() {
        double ratio = Math.pow(2.1 / 1.9, 2);
        double b = (ratio - 1) / (ratio + 1) / 5;
        double middle = 2.1 * Math.sqrt(1 - 5 * b);
        double[] x = values(t -> reel(middle, b, t) - reel(middle, b, t - DELAY_S));
        LineInverse inverse = of(x, new Comb(DELAY_S, 1e-5));
        FoundLine line = new FoundLine(2.1, 1.9, 0.001, SMALL, 1e-9, -0.02, 0.001);
        List<UndoneLine> lines = inverse.undo(List.of(line));
        assertEquals(0, lines.get(0).cos(), 1e-5 * SMALL);
        assertEquals(1 * SMALL, lines.get(0).sin(), 1e-5 * SMALL);
        assertSame(values(t -> reel(middle, b, t)), inverse.own(lines));
        // the comb's power, its ends and its middle by Simpson's rule
        double power = 0;
        for (int k = 0; k < 1000; k++) {
            power += Math.pow(2 * Math.sin(Math.PI * 0.1 * (1.9 + 0.2 * (k + 0.5) / 1000)), 2);
        }
        assertEquals(Math.sqrt(power / 1000), lines.get(0).gain(), 1e-6);
    }

    private static double reel(double middle, double b, double t) {
        return Math.sin(2 * Math.PI * 2 * middle / b * (Math.sqrt(1 + b * t) - 1));
    }

    /**
     * At 5 Hz, a top of the comb, the gain is 2. A fifth of that is reached by the delay at σ =
     * 0.4/(2π·5) = 12.73 ms, by the rate at an expanded uncertainty of 0.4/(π·0.1) = 1.273 Hz, or
     * by both at a root of two less, 9.0 ms and 0.9 Hz.
     */
    @ParameterizedTest
    @CsvSource({
        "12.7, 0, 1",
        "12.8, 0, 0",
        "0, 1.27, 1",
        "0, 1.28, 0",
        "8.99, 0.899, 1",
        "9.01, 0.901, 0",
    })
    void aLineOfUncertainGainIsLeft(double sigmaMs, double hzUncertainty, int undone) {
        LineInverse inverse = of(values(t -> heard(5, 1, 0, t)), new Comb(DELAY_S, sigmaMs / 1000));
        FoundLine line = new FoundLine(5, 5, hzUncertainty, SMALL, 1e-9, 0, 0);
        assertEquals(undone, inverse.undo(List.of(line)).size());
    }

    /** At a zero of the comb nothing is heard, whatever the transport does. */
    @Test
    void aLineAtAZeroIsLeft() {
        LineInverse inverse = of(values(t -> heard(3.2, 1, 0, t)), new Comb(DELAY_S, 1e-5));
        List<UndoneLine> lines = inverse.undo(List.of(steady(10), steady(3.2)));
        assertEquals(List.of(steady(3.2)), lines.stream().map(UndoneLine::heard).toList());
        assertEquals(List.of(), inverse.undo(List.of()));
    }

    /**
     * What is louder than the line but not like it, a slow slope here, hardly changes what is found
     * under Hann's window, whose sidelobes fall fast.
     */
    @Test
    void aSlopeIsNotTakenForTheLine() {
        LineInverse inverse = of(values(t -> heard(5, 1, 0, t) + 4 * t), new Comb(DELAY_S, 1e-5));
        UndoneLine line = inverse.undo(List.of(steady(5))).get(0);
        assertEquals(1 * SMALL, line.cos(), 1e-3 * SMALL);
        assertEquals(0, line.sin(), 1e-3 * SMALL);
    }
}
