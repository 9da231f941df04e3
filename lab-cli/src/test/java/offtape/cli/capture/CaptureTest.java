package offtape.cli.capture;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import offtape.cli.sound.LevelCeiling;
import offtape.cli.sound.SoundTroubleException;
import offtape.core.audio.AudioFile;
import offtape.core.audio.AudioFiles;
import offtape.core.audio.MemoryAudio;
import offtape.core.audio.WavEncoding;
import offtape.core.audio.WavFormat;
import offtape.core.audio.WavWriter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Playing and recording at once over a stream that gives back what it gets. */
@Timeout(60)
class CaptureTest {

    private static final int RATE = 48_000;
    private static final int DELAY = 1234;
    private static final double LEAD_S = 0.25;

    @TempDir private Path folder;

    private final StopSignal stop = new StopSignal();

    private static double[][] noise(int frames) {
        Random random = new Random(frames);
        double[][] x = new double[2][frames];
        for (double[] channel : x) {
            Arrays.setAll(channel, i -> Math.rint(random.nextDouble(-1, 1) * 8e6) / 8_388_608);
        }
        return x;
    }

    private CaptureResult capture(LoopStream stream, double[][] sound, CaptureProgress progress) {
        PlayList list =
                new PlayList(
                        new MemoryAudio("sound", RATE, sound),
                        1,
                        LEAD_S,
                        0.5,
                        LevelCeiling.FULL_SCALE);
        try (WavWriter wav =
                WavWriter.create(
                        folder.resolve("out.wav"), new WavFormat(RATE, 2, WavEncoding.PCM_24))) {
            return new Capture(stream, stop, progress).run(list, wav);
        }
    }

    @Test
    void everySampleComesBackOnceAndInOrder() {
        double[][] sent = noise(5 * RATE);
        CaptureResult result = capture(new LoopStream(2, DELAY), sent, (a, b, c, d) -> {});
        assertTrue(result.complete());
        assertFalse(result.isSilent());
        assertEquals(0, result.clippedFrames());
        assertEquals(0, result.marks().troubles().size());
        int begin = (int) (LEAD_S * RATE) + DELAY;
        try (AudioFile back = AudioFiles.open(folder.resolve("out.wav"))) {
            double[][] heard = back.read(begin, sent[0].length);
            assertArrayEquals(sent[0], heard[0]);
            assertArrayEquals(sent[1], heard[1]);
            for (double v : back.read(0, begin)[0]) {
                assertEquals(0, v);
            }
        }
    }

    @Test
    void aStopEndsItSoonAndKeepsWhatWasRecorded() {
        LoopStream stream = new LoopStream(2, DELAY);
        stream.stoppedAfter = 2L * RATE;
        stream.stopping = stop::give;
        CaptureResult result = capture(stream, noise(20 * RATE), (a, b, c, d) -> {});
        assertFalse(result.complete());
        assertTrue(stream.played() < 3 * RATE);
        try (AudioFile back = AudioFiles.open(folder.resolve("out.wav"))) {
            assertEquals(result.frames(), back.frames());
            assertTrue(back.frames() > 1.9 * RATE);
        }
    }

    @Test
    void aLostDeviceIsToldAndTheFileIsReadable() {
        LoopStream stream = new LoopStream(2, DELAY);
        stream.lostAfter = 2L * RATE;
        assertThrows(
                SoundTroubleException.class,
                () -> capture(stream, noise(5 * RATE), (a, b, c, d) -> {}));
        try (AudioFile back = AudioFiles.open(folder.resolve("out.wav"))) {
            assertTrue(back.frames() > 1.9 * RATE);
        }
    }

    @Test
    void clippingAndGapsAreNoted() {
        double[][] loud = new double[2][2 * RATE];
        loud[1][RATE] = 1;
        LoopStream stream = new LoopStream(2, DELAY);
        stream.underrunAfter = RATE;
        CaptureResult result = capture(stream, loud, (a, b, c, d) -> {});
        assertEquals(1, result.clippedFrames());
        assertEquals(0, result.peaks()[0]);
        assertEquals(1, result.marks().troubles().size());
        CaptureMarks.Trouble gap = result.marks().troubles().get(0);
        assertEquals(CaptureMarks.Kind.GAP_PLAYED, gap.kind());
        // on its way between player and recorder is no more than the stream holds, 0.2 s
        assertEquals(1.0, gap.seconds(), 0.3);
    }
}
