package offtape.report.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import offtape.core.audio.AudioSource;
import offtape.core.audio.ChannelChoice;
import offtape.core.audio.MemoryAudio;
import offtape.report.result.HealthNote;
import org.junit.jupiter.api.Test;

class RecordingNotesTest {

    /** Longer than is read at a time. */
    private static final int FRAMES = 70_000;

    private static double[] sound(double phase) {
        double[] x = new double[FRAMES];
        for (int i = 0; i < FRAMES; i++) {
            x[i] = Math.sin(0.1 * i + phase);
        }
        return x;
    }

    private static List<HealthNote> notes(int rate, double[]... channels) {
        return RecordingNotes.of(new MemoryAudio("r.wav", rate, channels));
    }

    private static HealthNote only(List<HealthNote> notes) {
        assertEquals(1, notes.size(), notes.toString());
        return notes.get(0);
    }

    @Test
    void twoChannelsAtTheRateOfADiscNeedNoWord() {
        assertEquals(List.of(), notes(44_100, sound(0), sound(1)));
    }

    /** Half of 32,000 frames a second is 16 kHz. */
    @Test
    void aLowRateIsToldWithItsBand() {
        HealthNote note = only(notes(32_000, sound(0), sound(1)));
        assertEquals("warning", note.severity());
        assertEquals("narrow-band", note.code());
        assertTrue(note.message().contains("32000 frames a second and so ends at 16.0 kHz"));
        assertEquals("narrow-band", only(notes(44_099, sound(0), sound(1))).code());
    }

    @Test
    void oneChannelIsTold() {
        HealthNote note = only(notes(48_000, sound(0)));
        assertEquals("note", note.severity());
        assertEquals("mono", note.code());
    }

    @Test
    void whichOfManyChannelsWereMeasuredIsTold() {
        AudioSource four = new MemoryAudio("r.wav", 48_000, sound(0), sound(1), sound(2), sound(3));
        HealthNote unasked = only(RecordingNotes.of(ChannelChoice.firstTwo(four)));
        assertEquals("more-channels", unasked.code());
        assertTrue(unasked.message().startsWith("The recording has 4 channels;"));
        HealthNote pair = only(RecordingNotes.of(new ChannelChoice(List.of(4, 2)).of(four)));
        assertEquals("chosen-channels", pair.code());
        assertTrue(pair.message().startsWith("Channels 4 and 2 of 4 were measured"));
        HealthNote single = only(RecordingNotes.of(new ChannelChoice(List.of(3)).of(four)));
        assertEquals("chosen-channels", single.code());
        assertTrue(single.message().startsWith("Channel 3 of 4 was measured"));
    }

    /** One sample in the second block tells them apart; silence says nothing. */
    @Test
    void onlyTheSameSamplesThroughoutAreIdentical() {
        assertEquals("identical-channels", only(notes(48_000, sound(0), sound(0))).code());
        double[] other = sound(0);
        other[FRAMES - 1] += 1e-9;
        assertEquals(List.of(), notes(48_000, sound(0), other));
        assertEquals(List.of(), notes(48_000, new double[FRAMES], new double[FRAMES]));
        double[] late = new double[FRAMES];
        late[FRAMES - 1] = 1;
        assertEquals("identical-channels", only(notes(48_000, late, late.clone())).code());
    }
}
