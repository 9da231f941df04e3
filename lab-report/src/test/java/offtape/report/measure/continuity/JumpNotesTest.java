package offtape.report.measure.continuity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Collections;
import java.util.List;
import offtape.report.result.HealthNote;
import org.junit.jupiter.api.Test;

/** Places at which time jumps, in words. */
class JumpNotesTest {

    private static final Jump CUT = new Jump(12.30, 12.32, -0.0105);
    private static final Jump WIDE_GAP = new Jump(20.5, 22.3, 0.04);

    private static String message(List<Jump> jumps) {
        List<HealthNote> notes = JumpNotes.of(jumps);
        assertEquals(1, notes.size());
        assertEquals("warning", notes.get(0).severity());
        assertEquals("xrun", notes.get(0).code());
        return notes.get(0).message();
    }

    /** Milliseconds, without a sign: the words tell the direction. */
    @Test
    void aSharpPlaceIsTold() {
        assertTrue(
                message(List.of(CUT))
                        .startsWith("At 12.31 s of the recording 10.5 ms of sound are missing. "));
        Jump gap = new Jump(12.30, 12.32, 0.0105);
        assertTrue(
                message(List.of(gap))
                        .startsWith("At 12.31 s of the recording 10.5 ms were added. "));
    }

    @Test
    void aWidePlaceIsToldByItsBounds() {
        String added = "Between 20.5 s and 22.3 s of the recording 40.0 ms were added. ";
        assertTrue(message(List.of(WIDE_GAP)).startsWith(added));
        Jump cut = new Jump(20.5, 22.3, -0.04);
        String missing =
                "Between 20.5 s and 22.3 s of the recording 40.0 ms of sound are missing. ";
        assertTrue(message(List.of(cut)).startsWith(missing));
    }

    /** A tenth of a second is not sharp any more. */
    @Test
    void sharpIsLessThanATenthOfASecond() {
        assertTrue(new Jump(0, 0.099, 1).isSharp());
        assertFalse(new Jump(0, 0.1, 1).isSharp());
        assertEquals(21.4, WIDE_GAP.middleSeconds(), 1e-9);
    }

    /** Five are told one by one, in order; of more, how many. */
    @Test
    void manyAreCounted() {
        String five = message(Collections.nCopies(5, CUT));
        assertEquals(5, five.split("12\\.31 s", -1).length - 1);
        assertFalse(five.contains("more such places"));
        String seven = message(Collections.nCopies(7, CUT));
        assertEquals(5, seven.split("12\\.31 s", -1).length - 1);
        assertTrue(seven.contains("There are 2 more such places. "));
        String both = message(List.of(CUT, WIDE_GAP));
        assertTrue(both.indexOf("12.31 s") < both.indexOf("22.3 s"));
        assertTrue(both.endsWith("fewer other programs."), both);
    }
}
