package offtape.cli.capture;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import offtape.cli.sound.LevelCeiling;
import offtape.cli.sound.SoundTroubleException;
import offtape.cli.sound.TooLoudException;
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

    private static PlayList list(double[][] sound, double gain, LevelCeiling ceiling) {
        return new PlayList(new MemoryAudio("sound", RATE, sound), gain, LEAD_S, 0.5, ceiling);
    }

    private WavWriter wav(int channels) {
        return WavWriter.create(
                folder.resolve("out.wav"), new WavFormat(RATE, channels, WavEncoding.PCM_24));
    }

    private CaptureResult capture(LoopStream stream, double[][] sound, CaptureProgress progress) {
        try (WavWriter wav = wav(2)) {
            return new Capture(stream, stop, progress)
                    .run(list(sound, 1, LevelCeiling.FULL_SCALE), wav);
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

    @Test
    void lostSoundIsNoted() {
        LoopStream stream = new LoopStream(2, DELAY);
        stream.overrunAfter = RATE;
        CaptureResult result = capture(stream, noise(2 * RATE), (a, b, c, d) -> {});
        assertEquals(1, result.marks().troubles().size());
        CaptureMarks.Trouble lost = result.marks().troubles().get(0);
        assertEquals(CaptureMarks.Kind.SOUND_LOST, lost.kind());
        // recorded in pieces of 20 ms
        assertEquals(1.0, lost.seconds(), 0.021);
    }

    /** A converter of 16 bits goes no higher than 32767/32768, whatever the samples could hold. */
    @Test
    void aConverterOfSixteenBitsClipsBelowFullScale() {
        double[][] loud = new double[2][RATE];
        loud[0][100] = 32_767 / 32_768.0;
        loud[1][200] = 32_766 / 32_768.0;
        loud[1][300] = -1;
        CaptureResult result = capture(new LoopStream(2, DELAY), loud, (a, b, c, d) -> {});
        assertEquals(2, result.clippedFrames());
    }

    @Test
    void aLostOutputIsToldAndEndsTheRecording() {
        LoopStream stream = new LoopStream(2, DELAY);
        stream.outputLostAfter = RATE;
        assertEquals(
                "The output is gone.",
                assertThrows(
                                SoundTroubleException.class,
                                () -> capture(stream, noise(5 * RATE), (a, b, c, d) -> {}))
                        .getMessage());
        stream.close();
    }

    @Test
    void oneChannelGoesToBothAndIsTurnedDown() {
        double[][] sent = {noise(RATE)[0]};
        try (WavWriter wav = wav(2)) {
            new Capture(new LoopStream(2, DELAY), stop, (a, b, c, d) -> {})
                    .run(list(sent, 0.5, LevelCeiling.FULL_SCALE), wav);
        }
        try (AudioFile back = AudioFiles.open(folder.resolve("out.wav"))) {
            double[][] heard = back.read((int) (LEAD_S * RATE) + DELAY, RATE);
            assertArrayEquals(heard[0], heard[1]);
            for (int i = 0; i < RATE; i++) {
                // halves of odd steps round to one side
                assertEquals(sent[0][i] / 2, heard[0][i], 0.5 / 8_388_608);
            }
        }
    }

    @Test
    void ofTwoChannelsTheLeftOneGoesToASingleOutput() {
        double[][] sent = noise(RATE);
        try (WavWriter wav = wav(1)) {
            new Capture(new LoopStream(1, DELAY), stop, (a, b, c, d) -> {})
                    .run(list(sent, 1, LevelCeiling.FULL_SCALE), wav);
        }
        try (AudioFile back = AudioFiles.open(folder.resolve("out.wav"))) {
            assertArrayEquals(sent[0], back.read((int) (LEAD_S * RATE) + DELAY, RATE)[0]);
        }
    }

    /** Found while reading ahead, so nothing above the ceiling ever reaches the device. */
    @Test
    void whatIsTooLoudIsNotPlayed() {
        double[][] sound = new double[2][4 * RATE];
        Arrays.fill(sound[0], 0, RATE, 0.1);
        sound[1][3 * RATE] = 0.6;
        LoopStream stream = new LoopStream(2, DELAY);
        try (WavWriter wav = wav(2)) {
            assertEquals(
                    "\"sound\" reaches -4.4 dBFS, above the highest level of -6.0 dBFS that was"
                            + " allowed. Allow more with --max-level.",
                    assertThrows(
                                    TooLoudException.class,
                                    () ->
                                            new Capture(stream, stop, (a, b, c, d) -> {})
                                                    .run(list(sound, 1, new LevelCeiling(-6)), wav))
                            .getMessage());
            assertTrue(stream.played() < (LEAD_S + 3) * RATE);
        }
        stream.close();
        try (AudioFile back = AudioFiles.open(folder.resolve("out.wav"))) {
            for (double v : back.read(0, (int) back.frames())[1]) {
                assertEquals(0, v);
            }
        }
    }

    /** Without playing, nothing but silence comes back over this stream. */
    @Test
    void recordingAloneEndsAfterItsTime() {
        LoopStream stream = new LoopStream(2, Integer.MAX_VALUE);
        stream.file = folder.resolve("out.wav");
        List<Double> told = new ArrayList<>();
        CaptureResult result;
        try (WavWriter wav = wav(2)) {
            result =
                    new Capture(
                                    stream,
                                    stop,
                                    (seconds, of, peaks, clipped) -> {
                                        assertEquals(2, of);
                                        assertArrayEquals(new double[2], peaks);
                                        assertFalse(clipped);
                                        told.add(seconds);
                                    })
                            .record(2, wav);
        }
        assertTrue(result.complete());
        assertTrue(result.isSilent());
        assertTrue(result.frames() >= 2 * RATE);
        assertTrue(result.marks().troubles().isEmpty());
        // a block is less than a tenth of a second, so it is told at least every 0.2 s
        assertTrue(told.size() >= 10 && told.get(0) < 0.2, told.toString());
    }

    @Test
    void theLevelIsToldAnewEachTime() {
        double[][] sound = new double[2][2 * RATE];
        sound[0][RATE / 2] = 0.5;
        List<Double> left = new ArrayList<>();
        capture(new LoopStream(2, DELAY), sound, (a, b, peaks, d) -> left.add(peaks[0]));
        assertEquals(1, left.stream().filter(p -> p == 0.5).count());
        assertEquals(left.size() - 1, left.stream().filter(p -> p == 0).count());
    }
}
