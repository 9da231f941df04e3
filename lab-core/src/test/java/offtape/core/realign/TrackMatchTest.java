package offtape.core.realign;

import static org.junit.jupiter.api.Assertions.assertEquals;

import offtape.core.align.Alignment;
import offtape.core.audio.AudioSource;
import offtape.core.audio.MemoryAudio;
import offtape.core.music.MadeUpMusic;
import offtape.core.music.MadeUpMusic.Kind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A track found in its return without marks. */
class TrackMatchTest {

    private static final int RATE = 48_000;

    private static MemoryAudio music(Kind kind, double seconds) {
        AudioSource made = MadeUpMusic.of(kind, RATE, seconds, 7);
        return new MemoryAudio("original", RATE, made.read(0, (int) made.frames()));
    }

    /** Bars: a hundredth of a frame on a clean path, a tenth with hiss at −50 dB. */
    @ParameterizedTest
    @CsvSource({
        "DRUMS, 12345.37, 0.8, -300, 0.01",
        "BASS, 300.25, -0.5, -300, 0.01",
        "VOICE, -5000.71, -1, -300, 0.01",
        "MIX, 777.5, 1, -50, 0.1",
    })
    void aDelayIsFoundToAFractionOfAFrame(
            Kind kind, double delay, double gain, double hissDb, double bar) {
        MemoryAudio original = music(kind, 6);
        Alignment found = TrackMatch.find(original, Delayed.by(original, delay, gain, hissDb));
        assertEquals(delay, found.startFrame(), bar);
        assertEquals(1, found.step());
        assertEquals(gain, found.gains().get(0), 0.002);
        assertEquals(gain, found.gains().get(1), 0.002);
    }

    @Test
    void aDigitalPathIsTakenAsItIs() {
        MemoryAudio original = music(Kind.DRUMS, 6);
        Alignment found = TrackMatch.find(original, Delayed.by(original, 4321, 1, -300));
        assertEquals(4321, found.startFrame());
        assertEquals(true, found.isExact());
    }
}
