package offtape.cli.realign;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import offtape.core.text.Language;
import offtape.core.text.Phrases;
import org.junit.jupiter.api.Test;

/** What was found against a session. */
class SessionWordsTest {

    private static SessionWords words() {
        return new SessionWords(Phrases.of(Language.ENGLISH, SessionWords.class));
    }

    /**
     * A recording clock that is 40 ppm fast makes 40 ppm more samples: the track comes back slow.
     */
    @Test
    void offTapeTheClocksAreCompared() {
        SessionTiming session = new SessionTiming("off-tape", 12.5, 40.0, 0.2, null, null);
        AgainstSession same = AgainstSession.of(session, 12.6, -39, 0.5);
        assertEquals(1, same.driftDifferencePpm(), 1e-9);
        assertEquals(
                List.of(
                        "the delay agrees with the session's (12.500 ms)",
                        "the clocks agree with the session's (slow by 40.00 ppm)"),
                words().lines(same));
        AgainstSession other = AgainstSession.of(session, 22.5, 40, 0.5);
        assertTrue(words().lines(other).get(0).contains("differs from the session's by 10.000"));
        assertTrue(words().lines(other).get(1).contains("by 80.00 ppm: another interface"));
    }

    @Test
    void inTwoPassesTheSpeedIsCompared() {
        SessionTiming session = new SessionTiming("two-pass", 100.0, null, null, 3000.0, 20.0);
        AgainstSession same = AgainstSession.of(session, 100, 2900, 5);
        assertTrue(words().lines(same).get(1).contains("the speed agrees"));
        AgainstSession other = AgainstSession.of(session, 100, 0, 5);
        assertTrue(words().lines(other).get(1).contains("differs from the session's (fast by"));
    }

    @Test
    void aTapeRecordedElsewhereTellsNothingOfTheTracksSpeed() {
        SessionTiming session = new SessionTiming("reference-tape", null, null, null, 3000.0, 20.0);
        AgainstSession against = AgainstSession.of(session, 100, 2900, 5);
        assertNull(against.driftPpm());
        assertEquals(List.of(), words().lines(against));
    }
}
