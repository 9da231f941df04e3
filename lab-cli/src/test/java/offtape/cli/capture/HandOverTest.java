package offtape.cli.capture;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import offtape.cli.sound.FrameRing;
import org.junit.jupiter.api.Test;

/** What passes from one thread to another: frames, troubles, the wish to stop. */
class HandOverTest {

    @Test
    void aRingTakesWhatThereIsRoomForAndGivesItInOrder() {
        FrameRing ring = new FrameRing(1, 4);
        assertEquals(3, ring.put(new double[][] {{9, 1, 2, 3}}, 1, 3));
        double[][] out = new double[1][4];
        assertEquals(2, ring.take(out, 1, 2));
        assertArrayEquals(new double[] {0, 1, 2, 0}, out[0]);
        assertEquals(3, ring.room());
        assertEquals(3, ring.put(new double[][] {{4, 5, 6, 7}}, 0, 4), "over the end, until full");
        assertEquals(0, ring.put(new double[][] {{7}}, 0, 1));
        assertEquals(4, ring.take(out, 0, 9));
        assertArrayEquals(new double[] {3, 4, 5, 6}, out[0]);
    }

    @Test
    void aRingIsDoneWhenItEndedAndIsEmpty() {
        FrameRing ring = new FrameRing(1, 4);
        ring.put(new double[1][1], 0, 1);
        assertFalse(ring.isEnded());
        ring.end();
        assertTrue(ring.isEnded());
        assertFalse(ring.isDone());
        ring.take(new double[1][1], 0, 1);
        assertTrue(ring.isDone());
    }

    @Test
    void troublesBeyondTheRoomForThemAreLeftOut() {
        TroubleLog log = new TroubleLog(1000);
        for (int i = 0; i < 1500; i++) {
            log.recorded(500L * i);
            log.note(CaptureMarks.Kind.SOUND_LOST);
        }
        List<CaptureMarks.Trouble> troubles = log.marks().troubles();
        assertEquals(1000, troubles.size());
        assertEquals(new CaptureMarks.Trouble(CaptureMarks.Kind.SOUND_LOST, 1.5), troubles.get(3));
    }

    @Test
    void aStopRunsEachActionOnceAndAtOnceIfItWasGiven() {
        StopSignal stop = new StopSignal();
        List<String> done = new ArrayList<>();
        stop.whenGiven(() -> done.add("early"));
        assertEquals(List.of(), done);
        stop.give();
        stop.give();
        stop.whenGiven(() -> done.add("late"));
        assertTrue(stop.isGiven());
        assertEquals(List.of("early", "late"), done);
    }
}
