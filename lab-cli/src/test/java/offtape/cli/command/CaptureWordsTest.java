package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import offtape.cli.capture.CaptureMarks;
import offtape.cli.capture.CaptureMarks.Kind;
import offtape.cli.capture.CaptureMarks.Trouble;
import offtape.cli.capture.CaptureResult;
import offtape.cli.terminal.Terminal;
import org.junit.jupiter.api.Test;

/** What is said of a recording while it is made, and of one that was made. */
class CaptureWordsTest {

    private static final Path PLACE = Path.of("a.wav");

    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    private CaptureWords words(boolean interactive) {
        PrintStream stream = new PrintStream(err, true, StandardCharsets.UTF_8);
        return new CaptureWords(Terminal.of(stream, stream, interactive));
    }

    private List<String> lines(long frames, boolean complete, long clipped, Trouble... troubles) {
        CaptureMarks marks = new CaptureMarks(List.of(troubles));
        double[] peaks = {0.5, 0};
        return words(false)
                .recorded(new CaptureResult(frames, complete, peaks, clipped, marks), PLACE);
    }

    @Test
    void aGoodRecordingIsWritten() {
        assertEquals(List.of("Written: a.wav"), lines(9, true, 0));
    }

    @Test
    void aBrokenOneIsKeptIfThereIsAnything() {
        assertEquals(
                List.of("Broken off; what was recorded is kept in a.wav."), lines(9, false, 0));
        assertEquals(List.of("Broken off before anything was recorded."), lines(0, false, 0));
    }

    @Test
    void clippingIsCounted() {
        assertEquals(
                "Mind: the input reached full scale in 12 frames. Lower the input gain and record"
                        + " again.",
                lines(9, true, 12).get(1));
    }

    @Test
    void aFewTroublesAreNamedAndTheRestCounted() {
        Trouble[] troubles =
                IntStream.range(0, 10)
                        .mapToObj(i -> new Trouble(Kind.GAP_PLAYED, i))
                        .toArray(Trouble[]::new);
        List<String> lines = lines(9, true, 0, troubles);
        assertEquals(10, lines.size());
        assertEquals(
                "Mind: about 7.0 s into the recording, the computer was late and a gap was played."
                        + " Record again, with a longer --buffer or fewer other programs.",
                lines.get(8));
        assertEquals("Mind: 2 more such places.", lines.get(9));
    }

    /** 0.5 is −6.02 dB re full scale. */
    @Test
    void aTerminalShowsLevelsAndTheTimeThatIsLeft() {
        words(true).progress(61.2, 130, new double[] {0.5, 0}, true);
        assertEquals(
                "\r\u001b[KRecording 1:01, 1:09 left  -6.0 dBFS  silent  CLIPPED",
                err.toString(StandardCharsets.UTF_8));
    }

    @Test
    void elsewhereALineEveryTenSecondsIsEnough() {
        CaptureWords words = words(false);
        for (double s = 0; s < 21; s += 0.5) {
            words.progress(s, 21, new double[] {1}, false);
        }
        assertEquals(
                """
                Recording 0:00, 0:21 left  0.0 dBFS
                Recording 0:10, 0:11 left  0.0 dBFS
                Recording 0:20, 0:01 left  0.0 dBFS
                """,
                err.toString(StandardCharsets.UTF_8));
    }
}
