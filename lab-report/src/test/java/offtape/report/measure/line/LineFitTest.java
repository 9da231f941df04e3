package offtape.report.measure.line;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import offtape.reference.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LineFitTest {

    private static final double SECONDS = 20;

    /** 20 s at 25 Hz, with lines in it. */
    private static Stretch stretch(Line... lines) {
        Stretch s = new Stretch(new double[500], 25);
        for (Line line : lines) {
            s.subtract(line, -1);
        }
        return s;
    }

    private static void assertLine(Line expected, Line line) {
        assertEquals(expected.hz(), line.hz(), 1e-8);
        assertEquals(expected.bend(), line.bend(), 1e-8);
        assertEquals(expected.re(), line.re(), 1e-7);
        assertEquals(expected.im(), line.im(), 1e-7);
    }

    /** A line that makes no whole number of turns, from up to half a bin of 1/20 Hz beside it. */
    @ParameterizedTest
    @ValueSource(doubles = {-0.5, -0.2, 0, 0.3, 0.5})
    void aSteadyLineIsFoundAgain(double bins) {
        Line line = new Line(1.237, 0, 0.3, -0.1);
        double guess = line.hz() + bins / SECONDS;
        assertLine(line, new LineFit(stretch(line), false).fit(guess, 0));
        assertLine(line, new LineFit(stretch(line), true).fit(guess, 0));
    }

    /** Less than a turn and a half: cosine and sine are not of equal power under the window. */
    @Test
    void aLineOfFewTurnsIsExactToo() {
        Line line = new Line(0.07, 0, 0.3, -0.1);
        assertLine(line, new LineFit(stretch(line), false).fit(0.07, 0));
    }

    @ParameterizedTest
    @CsvSource({"0.03, 0.032", "0.03, 0.027", "-0.05, -0.048", "0.01, 0"})
    void aReelIsFoundAgain(double bend, double guess) {
        Line line = new Line(1.237, bend, -0.2, 0.1);
        assertLine(line, new LineFit(stretch(line), true).fit(1.237 + 0.2 / SECONDS, guess));
    }

    /** Where a line bends they are not at right angles either. */
    @Test
    void aReelOfFewTurnsIsExactToo() {
        Line line = new Line(0.11, 0.06, 0.3, -0.1);
        assertLine(line, new LineFit(stretch(line), true).fit(0.11, 0.06));
    }

    /** Two lines far from each other: fitted to one, the other is no more than Hann's side lobe. */
    @Test
    void aLineIsFittedWhereItWasLookedFor() {
        Line a = new Line(1.2, 0, 0.3, 0);
        Line b = new Line(3.9, 0, 0, 0.3);
        assertEquals(1.2, new LineFit(stretch(a, b), false).fit(1.21, 0).hz(), 1e-5);
        assertEquals(3.9, new LineFit(stretch(a, b), false).fit(3.91, 0).hz(), 1e-5);
    }

    /** A pack whose r² would change by 1.9 of its middle value is held to 1.6 over the stretch. */
    @ParameterizedTest
    @ValueSource(ints = {1, -1})
    void aBendIsHeldToWhatAPackCanDo(int sign) {
        Line line = new Line(1.237, sign * 1.9 / SECONDS, 0.2, 0.1);
        Line fitted = new LineFit(stretch(line), true).fit(1.237, sign * 1.58 / SECONDS);
        assertEquals(sign * 1.6 / SECONDS, fitted.bend(), 1e-12);
    }

    /**
     * White noise of one-sided density S shows as 3·S/T under Hann's window, whose noise bandwidth
     * is 1.5/T and which counts squared peaks. The bound for the frequency of a sine of peak A is
     * √(12·S/(A²·T))/(2π·T). The window costs √(∫w²t²/12)/∫wt² = √(0.0075028/12)/0.0163364 = 1.5306
     * times that, over a stretch from −½ to ½.
     */
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    @Source("D. C. Rife, R. R. Boorstyn, IEEE Trans. Inf. Theory 20(5), 1974, bounds (from memory)")
    void theFrequencyIsAsUncertainAsTheBoundSays(boolean bends) {
        double density = 1e-4;
        double bound = Math.sqrt(12 * density / (0.5 * 0.5 * SECONDS)) / (2 * Math.PI * SECONDS);
        Line line = new Line(1.5, 0, 0.3, -0.4);
        double told = new LineFit(stretch(), bends).deviations(line, 3 * density / SECONDS)[0];
        assertEquals(1.5306 * bound, told, 1e-3 * bound);
    }

    /**
     * A bend moves the phase by −π·f·b·t²/2, of which a constant phase takes the mean under the
     * window, m = ∫wt²/∫w. With q = t² − m the error of b for a standard deviation σ of n samples
     * is σ·√(2/n)/A·√(∫w²q²)/∫wq²/(π·f/2), the integrals from −½ to ½ being 3.03144e-4 and
     * 7.50585e-4 times powers of T: 23.1969/T². And 3·S/T is 6·σ²/n.
     */
    @Test
    void theBendIsAsUncertainAsTheWindowLeavesIt() {
        double sigma = 0.02;
        Line line = new Line(1.5, 0, 0.3, -0.4);
        double[] told = new LineFit(stretch(), true).deviations(line, 6 * sigma * sigma / 500);
        double q = Math.sqrt(3.03144e-4) / 7.50585e-4 / (SECONDS * SECONDS);
        double expected = sigma * Math.sqrt(2 / 500.0) / 0.5 * q / (Math.PI * 1.5 / 2);
        assertEquals(expected, told[1], 1e-3 * expected);
        assertEquals(0, new LineFit(stretch(), false).deviations(line, 1e-6)[1], 0);
    }

    /** Where the bend is known by itself the frequency is, too, as if there were none. */
    @Test
    void aBentLineIsNoSurerThanASteadyOne() {
        double steady = new LineFit(stretch(), true).deviations(new Line(1.5, 0, 1, 0), 1e-6)[0];
        double bent = new LineFit(stretch(), true).deviations(new Line(1.5, 0.05, 1, 0), 1e-6)[0];
        assertTrue(bent >= steady, bent + " against " + steady);
    }
}
