package offtape.core.align;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class MarkedSoundTest {

    /** At 4 kHz a mark has 2000 frames and so has a pause. */
    @Test
    void laysMarksAndPausesAboutASound() {
        Closed sound = new Closed(10);
        MarkedSound sent = new MarkedSound(sound, 0.01, 0.5);
        assertEquals(4000, sent.soundFrame());
        assertEquals(6010, sent.secondMarkFrame());
        assertEquals(8010, sent.frames());
        assertEquals(4000, sent.sampleRateHz());
        assertEquals(2, sent.channels());
        assertEquals("steps", sent.name());
        double[][] x = sent.read(-5, 8100);
        for (int i = 0; i < 10; i++) {
            assertEquals(0.01 * (i + 1), x[0][5 + 4000 + i], 1e-12);
            assertEquals(-0.01 * (i + 1), x[1][5 + 4000 + i], 1e-12);
        }
        double[] marks = new double[8100];
        HeardMark.add(marks, 4000, 5 + 1000, 1, 0.5);
        HeardMark.add(marks, 4000, 5 + 6010 + 1000, 1, 0.5);
        for (int i = 0; i < 8100; i++) {
            boolean isSound = i >= 4005 && i < 4015;
            assertEquals(marks[i], isSound ? 0 : x[0][i], 1e-9);
        }
        sent.close();
        assertTrue(sound.isClosed());
    }
}
