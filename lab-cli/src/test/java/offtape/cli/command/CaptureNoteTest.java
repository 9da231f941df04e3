package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Instant;
import java.util.List;
import offtape.core.audio.BroadcastNote;
import org.junit.jupiter.api.Test;

class CaptureNoteTest {

    // 13:00:05.250 is 46805.25 s after midnight: at 48000 Hz frame 2 246 652 000
    private static final Instant START = Instant.parse("2031-02-03T13:00:05.250Z");

    @Test
    void tellsTheMachineAndWhenItBegan() {
        SessionSaid said = new SessionSaid("Kitchen deck", "blue", "left fader", 190.5, null, null);
        BroadcastNote note = CaptureNote.ofReturn(said).at(START, 48_000);
        assertEquals(
                "Return of a test programme from Kitchen deck. left fader", note.description());
        assertEquals("2031-02-03", note.date());
        assertEquals("13:00:05", note.time());
        assertEquals(2_246_652_000L, note.firstFrame());
        assertEquals(List.of("A=ANALOGUE,T=Kitchen deck; blue; 19.05 cm/s"), note.history());
    }

    @Test
    void whatIsNotKnownIsNotTold() {
        SessionSaid said = new SessionSaid(null, null, null, null, null, null);
        BroadcastNote note = CaptureNote.ofReturn(said).at(START, 44_100);
        assertEquals("Return of a test programme", note.description());
        assertEquals(List.of(), note.history());
    }
}
