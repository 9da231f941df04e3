package offtape.report.measure.pass;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** One replay, from its sound. */
class PassReadingTest {

    /**
     * 1 % fast, with 0.2 % peak at 4 Hz, where the weighting is 1 and a quasi-peak reading is the
     * peak (IEC 60386).
     */
    @Test
    void aReplayIsReadFromItsTone() {
        Replay replay = Replay.tape(1000, 6).again(0.3, 1.01).read(0.2, 4, 0);
        PassReading reading =
                PassReading.of(replay.play(), "a.wav", "f".repeat(64), List.of("It is short."));
        assertEquals("a.wav", reading.pass().file());
        assertEquals("f".repeat(64), reading.pass().recordingSha256());
        assertEquals(List.of("It is short."), reading.notes());
        assertEquals(1, reading.pass().rate().value(), 0.01);
        assertEquals(0.2, reading.pass().figures().weightedPeak().value(), 0.004);
        assertEquals(6 / 1.01, reading.seconds(), 0.5);
        assertEquals(1000, reading.course().orElseThrow().toneHz(), 0);
        assertTrue(reading.besides(reading) == reading);
    }
}
