package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The command over made-up devices, without a terminal. */
@Timeout(60)
class LineupCommandTest {

    private static final double DOWN = Math.pow(10, -1.3 / 20);

    @TempDir private Path folder;

    private static JsonNode json(String text) {
        try {
            return new ObjectMapper().readTree(text);
        } catch (JsonProcessingException e) {
            throw new AssertionError(text, e);
        }
    }

    private static Tool.Outcome lineup(double rightGain, Object... options) {
        Object[] words = new Object[options.length + 2];
        words[0] = "lineup";
        words[1] = "--no-settings";
        System.arraycopy(options, 0, words, 2, options.length);
        return Tool.run(MadeStream.loop(rightGain), words);
    }

    @Test
    void linesGoToStandardOutputAndAdviceBesideIt() {
        Tool.Outcome outcome = lineup(DOWN, "--plain", "--seconds", 2);
        assertEquals(0, outcome.code());
        List<String> lines = outcome.out().lines().toList();
        assertTrue(lines.get(0).startsWith("noise  left silent"), outcome.out());
        assertTrue(lines.get(1).startsWith("delay  "), outcome.out());
        assertTrue(lines.get(2).startsWith("left 0.00 dB re sent (-18.00 dBFS), right -1.30 dB"));
        assertTrue(outcome.err().startsWith("CAUTION: A steady tone"), outcome.err());
        assertTrue(
                outcome.err()
                        .contains("> Right comes back 1.3 dB low: raise the right record gain."),
                outcome.err());
    }

    @Test
    void theLastReadingsAreAnswered() {
        Tool.Outcome outcome =
                lineup(DOWN, "--json", "--seconds", 0.5, "--reference-level", -20, "--level", -2);
        assertEquals(0, outcome.code(), outcome.err());
        JsonNode answer = json(outcome.out());
        assertEquals("gains", answer.get("view").asText());
        assertEquals(-2, answer.at("/sent/levelDb").asDouble(), 1e-9);
        assertEquals(0, answer.at("/returns/0/levelDb").asDouble(), 0.001);
        assertEquals(-22, answer.at("/returns/0/levelDbfs").asDouble(), 0.001);
        assertEquals(-1.3, answer.get("rightLessLeftDb").asDouble(), 0.001);
        // from 0 to what the stream holds, as the recorder may have been ahead
        assertTrue(answer.get("delayMs").asDouble() >= 0);
        assertTrue(answer.get("delayMs").asDouble() <= 100.1);
        assertTrue(answer.at("/returns/0/noiseDb").isNull());
        assertEquals(0, answer.get("late").asInt());
    }

    @Test
    void oneChannelAndAnotherFrequencyAreSent() {
        JsonNode answer =
                json(
                        lineup(
                                        1,
                                        "--json",
                                        "--seconds",
                                        1,
                                        "--channels",
                                        "left",
                                        "--frequency",
                                        315)
                                .out());
        assertEquals(315, answer.at("/sent/frequencyHz").asDouble());
        assertEquals("left", answer.at("/sent/channels").asText());
        assertTrue(answer.at("/returns/1/levelDbfs").isNull());
        assertTrue(answer.get("rightLessLeftDb").isNull());
        assertTrue(answer.get("advice").toString().contains("Nothing of it is heard on right."));
    }

    @Test
    void aProgrammeTellsTheReference() throws IOException {
        Files.writeString(
                folder.resolve("programme.json"),
                """
                { "format": "offtape-programme", "version": 1, "sampleRate": 48000,
                  "frames": 96000, "referenceDbfs": -24.0,
                  "cues": [ { "id": "speed", "kind": "tone", "channels": "both",
                    "startFrame": 0, "frames": 96000, "frequencyHz": 3150.0, "levelDb": 0.0 } ] }
                """);
        JsonNode answer = json(lineup(1, "--json", "--seconds", 0.5, "--programme", folder).out());
        assertEquals(-24, answer.get("referenceDbfs").asDouble());
        assertEquals(-24, answer.at("/returns/1/levelDbfs").asDouble(), 0.001);
    }

    @Test
    void azimuthIsAnswered() {
        JsonNode answer = json(lineup(1, "--json", "--seconds", 0.5, "--aid", "azimuth").out());
        assertEquals(0, answer.at("/interchannel/delayMicroseconds").asDouble(), 0.01);
        assertTrue(answer.at("/sent/frequencyHz").isNull());
    }

    @Test
    void aTapesToneIsListenedToWithoutPlaying() {
        Tool.Outcome outcome =
                Tool.run(
                        MadeStream.tape(i -> 0.1 * Math.sin(2 * Math.PI * 997 * i / 48_000.0)),
                        "lineup",
                        "--no-settings",
                        "--listen",
                        "--json",
                        "--target-level",
                        -19,
                        "--seconds",
                        0.5);
        assertEquals(0, outcome.code(), outcome.err());
        JsonNode answer = json(outcome.out());
        assertEquals(997, answer.get("tapeHz").asDouble(), 0.1);
        assertEquals(-1, answer.at("/returns/0/levelDb").asDouble(), 0.001);
        assertTrue(answer.get("sent").isNull());
        assertTrue(answer.get("advice").get(0).asText().startsWith("Left is 1.0 dB low: raise"));
    }

    @Test
    void aToneAboveTheCeilingIsRefused() {
        Tool.Outcome outcome = lineup(1, "--plain", "--seconds", 0.5, "--max-level", -30);
        assertEquals(2, outcome.code());
        assertTrue(outcome.err().contains("above the highest level of -30.0 dBFS"), outcome.err());
    }

    @Test
    void aLostDeviceIsTold() {
        Tool.Outcome outcome =
                Tool.run(MadeStream.lost(3 * 48_000), "lineup", "--no-settings", "--plain");
        assertEquals(4, outcome.code());
        assertTrue(outcome.err().contains("The input is gone."), outcome.err());
    }

    @Test
    void whatDoesNotGoTogetherIsRefused() {
        for (Object[] options :
                List.of(
                        new Object[] {"--json"},
                        new Object[] {"--seconds", 0},
                        new Object[] {"--frequency", 5},
                        new Object[] {"--level", "nan"},
                        new Object[] {"--channels", "middle"},
                        new Object[] {"--aid", "bias", "--listen"})) {
            assertEquals(2, lineup(1, options).code());
        }
    }
}
