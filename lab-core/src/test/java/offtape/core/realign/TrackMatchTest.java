package offtape.core.realign;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
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

    private static FoundTrack follow(AudioSource original, AudioSource returned, boolean isWhole) {
        return TrackMatch.follow(original, returned, Optional.empty(), isWhole);
    }

    /** Bars: a hundredth of a frame on a clean path, a tenth with hiss at −50 dB. */
    @ParameterizedTest
    @CsvSource({
        "DRUMS, 2.5, 12345.37, 0.8, -300, 0.01",
        "BASS, 2.5, 300.25, -0.5, -300, 0.01",
        "VOICE, 2.5, -5000.71, -1, -300, 0.01",
        "MIX, 2.5, 777.5, 1, -50, 0.1",
    })
    void aDelayIsFoundToAFractionOfAFrame(
            Kind kind, double seconds, double delay, double gain, double hissDb, double bar) {
        MemoryAudio original = music(kind, seconds);
        Alignment found = TrackMatch.find(original, Delayed.by(original, delay, gain, hissDb));
        assertEquals(delay, found.startFrame(), bar);
        assertEquals(1, found.step());
        assertEquals(gain, found.gains().get(0), 0.002);
        assertEquals(gain, found.gains().get(1), 0.002);
    }

    @Test
    void aDigitalPathIsTakenAsItIs() {
        MemoryAudio original = music(Kind.DRUMS, 2.5);
        FoundTrack found = follow(original, Delayed.by(original, 4321, 1, -300), true);
        assertEquals(4321, found.alignment().startFrame());
        assertTrue(found.alignment().isExact());
        assertFalse(found.warp().isSignificant());
    }

    /** A steady path is left a line, so that nothing is invented, also under hiss. */
    @ParameterizedTest
    @CsvSource({"DRUMS, -300", "DRUMS, -50", "BASS, -50"})
    void noWanderIsInventedOnASteadyPath(Kind kind, double hissDb) {
        MemoryAudio original = music(kind, 3);
        FoundTrack found = follow(original, Delayed.by(original, 1000.4, 1, hissDb), true);
        assertFalse(found.warp().isSignificant());
        assertEquals(1, found.alignment().step());
    }

    @Test
    void aMonoOriginalIsFoundOnBothChannelsOfItsReturn() {
        MemoryAudio stereo = music(Kind.DRUMS, 4);
        double[][] x = stereo.read(0, (int) stereo.frames());
        MemoryAudio mono = new MemoryAudio("mono", RATE, x[0]);
        MemoryAudio both = new MemoryAudio("both", RATE, x[0], x[0]);
        Alignment found = TrackMatch.find(mono, Delayed.by(both, 501.25, 0.6, -300));
        assertEquals(501.25, found.startFrame(), 0.01);
        assertEquals(2, found.gains().size());
        assertEquals(0.6, found.gains().get(1), 0.002);
    }

    /** A tenth of full scale of DC on the return moves neither place nor gain. */
    @Test
    void aConstantOffsetChangesNothing() {
        MemoryAudio original = music(Kind.DRUMS, 2.5);
        MemoryAudio late = Delayed.by(original, 777.25, 0.5, -300);
        double[][] y = late.read(0, (int) late.frames());
        for (double[] channel : y) {
            for (int i = 0; i < channel.length; i++) {
                channel[i] += 0.1;
            }
        }
        Alignment found = TrackMatch.find(original, new MemoryAudio("offset", RATE, y));
        assertEquals(777.25, found.startFrame(), 0.01);
        assertEquals(0.5, found.gains().get(0), 0.002);
    }

    /** A bar of a second three times over, returned five times over: what is known decides. */
    @Test
    void aLoopIsPlacedWhereASessionSays() {
        double[][] bar = music(Kind.DRUMS, 1).read(0, RATE);
        MemoryAudio original = repeated(bar, 3);
        MemoryAudio returned = repeated(bar, 5);
        FoundTrack told =
                TrackMatch.follow(original, returned, Optional.of(new Expectation(1.01)), false);
        assertEquals(RATE, told.alignment().startFrame());
        assertTrue(told.other().isEmpty());
        assertTrue(follow(original, returned, false).other().isPresent());
    }

    private static MemoryAudio repeated(double[][] bar, int times) {
        double[][] x = new double[bar.length][times * RATE];
        for (int c = 0; c < bar.length; c++) {
            for (int n = 0; n < times; n++) {
                System.arraycopy(bar[c], 0, x[c], n * RATE, RATE);
            }
        }
        return new MemoryAudio("loop", RATE, x);
    }
}
