package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import offtape.cli.sound.SoundLayers;
import offtape.core.audio.AudioFile;
import offtape.core.audio.AudioFiles;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A machine that records and replays one after the other: captures in halves, and erasing. */
@Timeout(120)
class TwoHeadsTest {

    @TempDir private Path folder;

    private Tool.Outcome capture(TapeLayer tape, Object... more) {
        return Tool.run(
                new SoundLayers(List.of(tape)),
                Lab.line(
                        Lab.line("capture", "--no-settings", "--programme", folder.resolve("mini")),
                        more));
    }

    @Test
    void theProgrammeIsRecordedAndThenReplayed() throws IOException {
        Mini.write(folder.resolve("mini"));
        TapeLayer tape = new TapeLayer(-70, folder.resolve("return.incomplete.wav"));
        Tool.Outcome record = capture(tape, "--mode", "two-pass", "--pass", "record");
        assertEquals(0, record.code(), record.err());
        assertTrue(record.err().contains("rewind"), record.err());
        Path out = folder.resolve("return.wav");
        Tool.Outcome replay =
                capture(tape, "--mode", "two-pass", "--pass", "replay", "--tail", 5, "--out", out);
        assertEquals(0, replay.code(), replay.err());
        assertTrue(replay.err().contains("start the tape"), replay.err());
        assertTrue(replay.err().contains("its tones show no gap"), replay.err());
        try (AudioFile back = AudioFiles.open(out)) {
            // the programme of 22 s and 5 s more, and what was on its way when that was enough
            assertTrue(back.frames() >= 27L * Mini.RATE);
        }
    }

    @Test
    void halvesThatDoNotGoWithTheModeAreRefused() {
        TapeLayer tape = new TapeLayer(-70, folder.resolve("none"));
        Path out = folder.resolve("return.wav");
        Object[][] lines = {
            {"--mode", "two-pass", "--out", out},
            {"--mode", "off-tape", "--pass", "replay", "--out", out},
            {"--mode", "reference-tape", "--pass", "record"},
            {"--pass", "record", "--out", out},
            {"--pass", "replay"},
        };
        for (Object[] line : lines) {
            Tool.Outcome outcome = capture(tape, line);
            assertEquals(2, outcome.code(), () -> Arrays.toString(line) + outcome.err());
            assertTrue(outcome.err().contains("--pass") || outcome.err().contains("--out"));
        }
        assertTrue(Files.notExists(out));
    }

    /** Silence is recorded over the first half of the tone, and −48 dB of it are left. */
    @Test
    void erasingIsCheckedInThreeSteps() throws IOException {
        Path out = folder.resolve("erasure.wav");
        TapeLayer tape = new TapeLayer(-48, folder.resolve("erasure.incomplete.wav"));
        Tool.Outcome outcome =
                Tool.answering(
                        new SoundLayers(List.of(tape)),
                        "\n\n\n",
                        "erasure",
                        "--no-settings",
                        "--json",
                        "--out",
                        out);
        assertEquals(0, outcome.code(), outcome.err());
        assertTrue(outcome.err().contains("3 of 3"));
        JsonNode channels = new ObjectMapper().readTree(outcome.out()).get("channels");
        assertEquals(2, channels.size());
        for (JsonNode channel : channels) {
            assertEquals(48, channel.get("erasure").get("value").asDouble(), 0.2);
            assertEquals(-12, channel.get("toneDbfs").asDouble(), 0.02);
        }
        Tool.Outcome again = Tool.run("erasure", "--recording", out);
        assertEquals(0, again.code(), again.err());
        assertTrue(again.out().contains("48.0"), again.out());
        assertTrue(again.out().contains("DIN 45500"), again.out());
    }

    @Test
    void erasingNeedsSomebody() {
        TapeLayer tape = new TapeLayer(-48, folder.resolve("x"));
        Tool.Outcome alone =
                Tool.run(
                        new SoundLayers(List.of(tape)),
                        "erasure",
                        "--no-settings",
                        "--out",
                        folder.resolve("e.wav"));
        assertEquals(3, alone.code());
        assertTrue(alone.err().contains("--recording"), alone.err());
        assertEquals(2, Tool.run("erasure").code());
        Tool.Outcome loud =
                Tool.run(
                        new SoundLayers(List.of(tape)),
                        "erasure",
                        "--no-settings",
                        "--max-level",
                        -20,
                        "--out",
                        folder.resolve("e.wav"));
        assertEquals(2, loud.code());
        assertTrue(loud.err().contains("-12.0 dBFS"), loud.err());
    }
}
