package offtape.report.measure.continuity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import offtape.core.audio.MemoryAudio;
import offtape.report.locate.Location;
import offtape.report.locate.Locator;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.locate.Returns;
import offtape.report.locate.TimeMap;
import offtape.report.result.HealthNote;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Returns out of which a piece was cut, or into which silence was put, at a known place. */
class JumpSearchTest {

    private static final int RATE = 48_000;
    private static final double BEFORE_S = 1;
    private static final Returns RETURNS = Returns.ofBrief();

    private static List<Jump> jumps(MemoryAudio heard, Location location) {
        return JumpSearch.find(new ProgrammeReturn(RETURNS.programme(), heard, location));
    }

    /** As if it were whole, which the search has to do with. */
    private static Location wholeAt(MemoryAudio heard, double speed) {
        double seconds = (double) heard.frames() / RATE;
        return new Location(
                TimeMap.straight(BEFORE_S, 1 / speed, RETURNS.seconds()),
                seconds,
                BEFORE_S,
                0.001,
                List.of(1, 1),
                true,
                true,
                0,
                seconds,
                List.of());
    }

    /** What a player or a recorder that is late does at a moment. */
    private static MemoryAudio broken(MemoryAudio whole, double atSeconds, double addedSeconds) {
        int frames = (int) whole.frames();
        int at = (int) Math.round(atSeconds * RATE);
        int added = (int) Math.round(addedSeconds * RATE);
        double[][] x = whole.read(0, frames);
        double[][] y = new double[2][frames + added];
        for (int c = 0; c < 2; c++) {
            System.arraycopy(x[c], 0, y[c], 0, at);
            int from = at + Math.max(0, -added);
            System.arraycopy(x[c], from, y[c], at + Math.max(0, added), frames - from);
        }
        return new MemoryAudio("return.wav", RATE, y[0], y[1]);
    }

    /**
     * In the long tone of 3150 Hz, 10 ms are 31.5 of its periods; in a sweep; between two tones,
     * where only the next edge tells. What is read of edges is good to some tenths of a
     * millisecond.
     */
    @ParameterizedTest
    @CsvSource({
        "1, 55, -0.010, true",
        "0.985, 60, 0.040, true",
        "1, 20, 0.040, true",
        "1, 28.3, -0.020, false",
        "0.985, 9, -0.004, false"
    })
    void aGapAndACutAreFoundWithTheirPlaceAndLength(
            double speed, double atSeconds, double addedSeconds, boolean sharp) {
        MemoryAudio whole = RETURNS.of(RATE, BEFORE_S, 1, speed, 0.5, 0.4);
        MemoryAudio heard = broken(whole, atSeconds, addedSeconds);
        List<Jump> found = jumps(heard, wholeAt(heard, speed));
        assertEquals(1, found.size(), () -> "found " + found);
        Jump jump = found.get(0);
        assertEquals(addedSeconds, jump.lateSeconds(), 5e-4);
        assertTrue(
                jump.fromSeconds() < atSeconds + 0.01 && jump.toSeconds() > atSeconds - 0.01,
                () -> "at " + jump);
        if (sharp) {
            assertEquals(atSeconds, jump.middleSeconds(), 0.02);
        }
        HealthNote note = JumpNotes.of(found).get(0);
        assertEquals("xrun", note.code());
        assertTrue(note.message().contains(addedSeconds > 0 ? "added" : "missing"));
    }

    @Test
    void theProgrammeIsLocatedWithAGapInIt() {
        MemoryAudio heard = broken(RETURNS.of(RATE, BEFORE_S, 1, 1, 0.5, 0.4), 44, 0.03);
        List<Jump> found = jumps(heard, Locator.locate(RETURNS.programme(), heard));
        assertEquals(1, found.size(), () -> "found " + found);
        assertEquals(0.03, found.get(0).lateSeconds(), 5e-4);
    }

    @Test
    void aWholeReturnHasNone() {
        MemoryAudio heard = RETURNS.of(RATE, BEFORE_S, 1, 0.985, 0.5, 0.4);
        assertEquals(List.of(), jumps(heard, wholeAt(heard, 0.985)));
        assertEquals(List.of(), JumpNotes.of(List.of()));
    }
}
