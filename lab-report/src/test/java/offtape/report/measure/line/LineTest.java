package offtape.report.measure.line;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LineTest {

    /**
     * With b = 0.04/s, 1 + b·t is 1.44 at 11 s and 0.64 at −9 s, whose roots are 1.2 and 0.8. So f
     * = f₀/1.2 and f₀/0.8; u = 2·11/2.2 = 10 s and −18/1.8 = −10 s; ∂u/∂b = −121/(1.2·2.2²) =
     * −125/6 and −81/(0.8·1.8²) = −31.25 s².
     */
    @ParameterizedTest
    @CsvSource({"11, 1.2, 10, -20.8333333333", "-9, 0.8, -10, -31.25"})
    void aReelTurnsAsItsPackSays(double seconds, double root, double turned, double byBend) {
        assertEquals(2.4 / root, new Line(2.4, 0.04, 1, 0).hzAt(seconds), 1e-12);
        assertEquals(turned, Line.turned(seconds, 0.04), 1e-12);
        assertEquals(seconds, Line.seconds(turned, 0.04), 1e-12);
        assertEquals(byBend, Line.turnedByBend(seconds, 0.04), 1e-9);
    }

    /** The frequency is what the phase gains in a second: f₀·du/dt, here over 2 ms. */
    @Test
    void theFrequencyIsThatOfThePhase() {
        double gained = Line.turned(7.001, -0.05) - Line.turned(6.999, -0.05);
        assertEquals(3 * gained / 0.002, new Line(3, -0.05, 0, 1).hzAt(7), 1e-6);
    }

    @Test
    void thePeakIsThatOfBothPartsTogether() {
        assertEquals(5, new Line(1, 0, 3, -4).peak(), 1e-12);
        assertFalse(new Line(1, 0, 3, -4).moves());
        assertTrue(new Line(1, -1e-6, 3, -4).moves());
    }

    /**
     * A line that is told by its two ends. Over 30 s with b·T/2 = 120/169, the roots at the ends
     * are 7/13 and 17/13: from f₀ = 1.19 Hz that is 2.21 Hz at the beginning and 0.91 Hz at the
     * end. It makes f₀·u turns: 1.19·30·13/30 = 15.47 after the middle and 1.19·30·13/20 = 23.205
     * before it.
     */
    @Test
    void turnsAreCountedFromTheEnds() {
        FoundLine line = new FoundLine(2.21, 0.91, 0, 0.1, 0, (0.91 - 2.21) / 30, 0);
        assertEquals(15.47, line.turns(15, 30), 1e-9);
        assertEquals(-23.205, line.turns(-15, 30), 1e-9);
        assertEquals(0, line.turns(0, 30), 0);
        assertEquals(1.56, line.middleHz(), 1e-12, "halfway between the ends");
        assertTrue(line.moves());
    }

    @Test
    void aSteadyLineTurnsEvenly() {
        FoundLine line = new FoundLine(1.5, 1.5, 0, 0.1, 0, 0, 0);
        assertEquals(6, line.turns(4, 20), 1e-12);
        assertEquals(-15, line.turns(-10, 20), 1e-12);
        assertFalse(line.moves());
    }
}
