package offtape.report.measure.pass;

import static org.junit.jupiter.api.Assertions.assertEquals;

import offtape.report.measure.line.FoundLine;
import org.junit.jupiter.api.Test;

/** A part's rate along the tape. */
class TapeLineTest {

    private static FoundLine found(double startHz, double endHz, double change) {
        return new FoundLine(startHz, endHz, 0.001, 0.05, 0.001, change, 0.001);
    }

    /** A quarter of a second at 9.5 Hz is 2.375 turns, before the middle as after it. */
    @Test
    void aSteadyLineTurnsEvenly() {
        TapeLine line = TapeLine.of(found(9.5, 9.5, 0), 12);
        assertEquals(9.5, line.hz(), 0);
        assertEquals(2 * Math.PI * 2.375, line.phase(0.25), 1e-12);
        assertEquals(-2 * Math.PI * 2.375, line.phase(-0.25), 1e-12);
    }

    /** Where movement is not told, the two ends are one frequency, told by the beginning. */
    @Test
    void aLineThatIsNotKnownToMoveIsSteady() {
        TapeLine line = TapeLine.of(found(2, 2.5, 0), 10);
        assertEquals(2, line.hz(), 0);
        assertEquals(0, line.bend(), 0);
    }

    /**
     * A reel: 1/f² grows evenly with the tape that is wound, f(t) = f₀/√(1 + b·t). From 2.5 Hz to
     * 1.25 Hz in 30 s: 1/f² goes from 0.16 to 0.64 s², 0.4 in the middle, so f₀² = 2.5 and b =
     * 2.5·0.48/30 = 0.04 1/s. The rate is the slope of the phase.
     */
    @Test
    void aReelsLineSlowsDown() {
        TapeLine line = TapeLine.of(found(2.5, 1.25, -1.25 / 30), 30);
        assertEquals(Math.sqrt(2.5), line.hz(), 1e-12);
        assertEquals(0.04, line.bend(), 1e-12);
        assertEquals(2.5, rate(line, -15), 1e-6);
        assertEquals(Math.sqrt(2.5), rate(line, 0), 1e-6);
        assertEquals(1.25, rate(line, 15), 1e-6);
        assertEquals(0, line.phase(0), 0);
    }

    private static double rate(TapeLine line, double at) {
        double h = 1e-5;
        return (line.phase(at + h) - line.phase(at - h)) / (2 * h) / (2 * Math.PI);
    }
}
