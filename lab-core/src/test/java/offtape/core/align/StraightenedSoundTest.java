package offtape.core.align;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import offtape.core.audio.MemoryAudio;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StraightenedSoundTest {

    private static final Alignment LATE = new Alignment(10, 1, List.of(2.0, -0.5), 0, false);

    /** Frame n is frame 10 + n of the recording, which holds 11 + n, over gain and drive. */
    @Test
    void wholeFramesAreCopied() {
        StraightenedSound sound = new StraightenedSound(new Closed(100), LATE, 4, 5);
        assertArrayEquals(
                new double[] {0, 0, 11 / 8.0, 12 / 8.0, 13 / 8.0, 14 / 8.0, 15 / 8.0, 0},
                sound.read(-2, 8)[0],
                1e-12);
        assertArrayEquals(
                new double[] {12 / 2.0, 13 / 2.0, 14 / 2.0, 15 / 2.0, 0, 0},
                sound.read(1, 6)[1],
                1e-12);
    }

    @Test
    void restIsThatOfTheRecording() {
        Closed recording = new Closed(100);
        StraightenedSound sound = new StraightenedSound(recording, LATE, 1, 7);
        assertEquals(4000, sound.sampleRateHz());
        assertEquals(2, sound.channels());
        assertEquals(7, sound.frames());
        assertEquals("steps", sound.name());
        sound.close();
        assertTrue(recording.isClosed());
    }

    /** A sine read at start + n · step by its own formula, whatever stretch it is read in. */
    @ParameterizedTest
    @CsvSource({"300.25, 1", "300, 0.9", "300.7, 1.1"})
    void placesBetweenFramesHoldTheSine(double start, double step) {
        double[] x = new double[1500];
        Arrays.setAll(x, i -> Math.sin(0.7 * i));
        StraightenedSound sound =
                new StraightenedSound(
                        new MemoryAudio("sine", 4000, x),
                        new Alignment(start, step, List.of(-2.0), 0, false),
                        1,
                        1000);
        for (int from : new int[] {0, 7, 300}) {
            double[] heard = sound.read(from, 600)[0];
            for (int i = 0; i < 600; i++) {
                double sine = Math.sin(0.7 * (start + step * (from + i)));
                assertEquals(-0.5 * sine, heard[i], 2e-5);
            }
        }
    }
}
