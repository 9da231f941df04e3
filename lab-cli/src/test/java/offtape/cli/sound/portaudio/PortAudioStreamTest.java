package offtape.cli.sound.portaudio;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.concurrent.locks.LockSupport;
import offtape.cli.capture.Capture;
import offtape.cli.capture.CaptureResult;
import offtape.cli.capture.PlayList;
import offtape.cli.capture.StopSignal;
import offtape.cli.sound.ChannelPair;
import offtape.cli.sound.LevelCeiling;
import offtape.cli.sound.SoundStream;
import offtape.cli.sound.SoundTroubleException;
import offtape.cli.sound.StreamRequest;
import offtape.core.audio.AudioFile;
import offtape.core.audio.AudioFiles;
import offtape.core.audio.MemoryAudio;
import offtape.core.audio.WavEncoding;
import offtape.core.audio.WavFormat;
import offtape.core.audio.WavWriter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A stream over a made-up library that gives back what is played. */
@Timeout(60)
class PortAudioStreamTest {

    private static final int RATE = 48_000;
    private static final double LONG_BUFFER_S = 5;
    private static final int ANY_FAULT = -9999;

    @TempDir private Path folder;

    private final FakePortAudio library = new FakePortAudio();

    private static StreamRequest request(String out, String in) {
        return new StreamRequest(
                out == null ? null : new StreamRequest.End(null, ChannelPair.parse(out)),
                in == null ? null : new StreamRequest.End(null, ChannelPair.parse(in)),
                RATE,
                LONG_BUFFER_S);
    }

    private SoundStream open(String out, String in) {
        return PortAudioStream.open(library, request(out, in), Duration.ofSeconds(30));
    }

    private static double[][] noise(int frames) {
        Random random = new Random(frames);
        double[][] x = new double[2][frames];
        for (double[] channel : x) {
            Arrays.setAll(channel, i -> Math.rint(random.nextDouble(-1, 1) * 8e6) / 8_388_608);
        }
        return x;
    }

    private CaptureResult capture(SoundStream stream, double[][] sound) {
        PlayList list =
                new PlayList(
                        new MemoryAudio("sound", RATE, sound),
                        1,
                        0.1,
                        0.1,
                        LevelCeiling.FULL_SCALE);
        try (WavWriter wav =
                WavWriter.create(
                        folder.resolve("out.wav"), new WavFormat(RATE, 2, WavEncoding.PCM_24))) {
            return new Capture(stream, new StopSignal(), (a, b, c, d) -> {}).run(list, wav);
        }
    }

    private int place(double[] heard, double[] sent) {
        for (int at = 0; at < heard.length - sent.length; at++) {
            if (heard[at] == sent[0] && heard[at + 1] == sent[1] && heard[at + 2] == sent[2]) {
                return at;
            }
        }
        throw new AssertionError("what was sent is not in what came back");
    }

    @Test
    void everySampleComesBackOnceAndInOrderOnTheChosenChannels() {
        double[][] sent = noise(RATE / 2);
        try (SoundStream stream = open("5,6", "6,5")) {
            CaptureResult result = capture(stream, sent);
            assertTrue(result.complete());
            assertEquals(0, result.marks().troubles().size());
        }
        try (AudioFile back = AudioFiles.open(folder.resolve("out.wav"))) {
            double[][] heard = back.read(0, (int) back.frames());
            int at = place(heard[1], sent[0]);
            assertArrayEquals(sent[0], Arrays.copyOfRange(heard[1], at, at + RATE / 2));
            assertArrayEquals(sent[1], Arrays.copyOfRange(heard[0], at, at + RATE / 2));
            for (int i = 0; i < at; i++) {
                assertEquals(0, heard[0][i]);
            }
        }
        assertEquals(
                List.of("initialize", "open", "start", "abort", "close", "terminate"),
                library.calls);
        assertEquals(1, library.callers.size());
    }

    @Test
    void otherChannelsStaySilent() {
        try (SoundStream stream = open("5,6", "3,8")) {
            CaptureResult result = capture(stream, noise(RATE / 4));
            assertTrue(result.isSilent());
        }
    }

    @Test
    void gapsAreCountedFromTheFirstFrameOn() {
        try (SoundStream stream = open("1,2", null)) {
            library.writing = PortAudioApi.OUTPUT_UNDERFLOWED;
            stream.startPlaying();
            await(() -> library.writing == 0);
            double[][] block = noise(960);
            stream.play(block, 960);
            assertEquals(0, stream.underruns());
            await(() -> library.writtenFrames >= FakePortAudio.BUFFER);
        }
        try (SoundStream stream = open("1,2", "1,2")) {
            stream.startRecording();
            stream.play(noise(960), 960);
            record(stream, FakePortAudio.BUFFER + 960);
            library.writing = PortAudioApi.OUTPUT_UNDERFLOWED;
            stream.play(noise(960), 960);
            await(() -> stream.underruns() == 1);
            library.askingWritable = PortAudioApi.OUTPUT_UNDERFLOWED;
            await(() -> stream.underruns() == 2);
            stream.play(noise(960), 960);
            assertEquals(0, stream.overruns());
        }
    }

    @Test
    void lostSoundIsCountedAndWhatCameIsKept() {
        library.standsAfter = 960;
        library.reading = PortAudioApi.INPUT_OVERFLOWED;
        try (SoundStream stream = open("1,2", "1,2")) {
            stream.startRecording();
            assertEquals(960, record(stream, 960));
            assertEquals(1, stream.overruns());
            library.askingReadable = PortAudioApi.INPUT_OVERFLOWED;
            await(() -> stream.overruns() == 2);
            assertEquals(0, stream.underruns());
        }
    }

    @Test
    void whatNobodyTakesIsOneLoss() {
        try (SoundStream stream = open(null, "1,2")) {
            stream.startRecording();
            await(() -> stream.overruns() == 1);
            library.standsAfter = 0;
            assertEquals(2 * RATE, record(stream, 2 * RATE));
        }
    }

    private static int record(SoundStream stream, int frames) {
        return stream.record(new double[stream.inputs()][frames], frames);
    }

    @Test
    void aLostDeviceEndsWaitingCallsInWords() {
        try (SoundStream stream = open("1,2", "1,2")) {
            stream.startRecording();
            library.reading = ANY_FAULT;
            Throwable e =
                    assertThrows(SoundTroubleException.class, () -> record(stream, 60 * RATE));
            assertTrue(e.getMessage().startsWith("The input gives no more sound"));
            assertTrue(e.getCause().getMessage().contains("fault -9999"));
            assertThrows(SoundTroubleException.class, () -> stream.play(noise(4 * RATE), 4 * RATE));
            assertThrows(SoundTroubleException.class, stream::drain);
        }
        assertEquals("terminate", library.calls.get(library.calls.size() - 1));
    }

    @Test
    void anOutputThatIsLostIsTold() {
        for (Runnable fault :
                List.<Runnable>of(
                        () -> library.writing = ANY_FAULT,
                        () -> library.askingWritable = ANY_FAULT,
                        () -> library.starting = ANY_FAULT)) {
            try (SoundStream stream = open("1,2", null)) {
                fault.run();
                stream.startPlaying();
                Throwable e =
                        assertThrows(
                                SoundTroubleException.class,
                                () -> stream.play(noise(4 * RATE), 4 * RATE));
                assertTrue(e.getMessage().startsWith("The output takes no more sound"));
            }
        }
    }

    @Test
    void aLibraryThatHangsCountsAsALostDevice() {
        try (SoundStream stream =
                PortAudioStream.open(library, request("1,2", "1,2"), Duration.ofMillis(100))) {
            library.hangs = true;
            stream.startRecording();
            assertThrows(SoundTroubleException.class, () -> record(stream, RATE));
            assertThrows(SoundTroubleException.class, () -> stream.play(noise(RATE), RATE));
            library.hangs = false;
        }
    }

    @Test
    void aStopLetsWaitingCallsComeBackAndAbortsTheStream() throws InterruptedException {
        try (SoundStream stream = open("1,2", "1,2")) {
            stream.startRecording();
            record(stream, 960);
            library.standsAfter = 0;
            Thread player = new Thread(() -> stream.play(noise(4 * RATE), 4 * RATE));
            Thread recorder = new Thread(() -> record(stream, 60 * RATE));
            player.start();
            recorder.start();
            stream.stop();
            player.join();
            recorder.join();
        }
        assertEquals(
                List.of("abort", "close", "terminate"),
                library.calls.subList(library.calls.size() - 3, library.calls.size()));
    }

    @Test
    void drainingWaitsUntilAsMuchSilenceFollowedAsTheSystemHolds() {
        try (SoundStream stream = open("1,2", "1,2")) {
            stream.startRecording();
            stream.play(noise(960), 960);
            long before = library.writtenFrames;
            stream.drain();
            assertTrue(library.writtenFrames - before >= FakePortAudio.BUFFER);
            stream.play(noise(960), 960);
            stream.drain();
            assertEquals(0, stream.underruns());
        }
    }

    @Test
    void aSystemThatRecordsOnlyWhenWaitedForIsWaitedFor() {
        library.standsAfter = 0;
        StreamRequest request =
                new StreamRequest(
                        null, new StreamRequest.End(null, ChannelPair.parse("2")), RATE, 1e-6);
        try (SoundStream stream = PortAudioStream.open(library, request, Duration.ofSeconds(30))) {
            stream.startRecording();
            assertEquals(10, record(stream, 10));
        }
    }

    @Test
    void aStreamThatNeverBeganIsClosed() {
        try (SoundStream stream = open("3", "1,2")) {
            assertEquals(1, stream.outputs());
            assertEquals(2, stream.inputs());
            assertEquals(24, stream.bits());
            assertEquals(RATE, stream.sampleRateHz());
        }
        assertEquals(List.of("initialize", "open", "abort", "close", "terminate"), library.calls);
    }

    private interface Condition {
        boolean holds();
    }

    private static void await(Condition condition) {
        long until = System.nanoTime() + 30_000_000_000L;
        while (!condition.holds()) {
            assertTrue(System.nanoTime() < until, "it never came to that");
            LockSupport.parkNanos(100_000);
        }
    }
}
