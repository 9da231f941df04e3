package offtape.core.programme;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import offtape.core.fault.UnusableInputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Cue sheets that someone broke, by accident or not: each is refused in its own words. */
class HostileCueSheetTest {

    private static final String GOOD =
            """
            { "format": "offtape-programme", "version": 1, "sampleRate": 48000, "frames": 480000,
              "referenceDbfs": -18.0, "maker": "another tool",
              "cues": [
                { "id": "start", "kind": "marker", "channels": "both", "startFrame": 0, "frames": 4800 },
                { "id": "tone", "kind": "tone", "channels": "both", "startFrame": 9600,
                  "frames": 96000, "frequencyHz": 3150.0, "levelDb": 0.0 },
                { "id": "up", "kind": "sweep", "channels": "left", "startFrame": 120000,
                  "frames": 48000, "startHz": 20, "endHz": 22000, "levelDb": -20 },
                { "id": "rungs", "kind": "ladder", "channels": "right", "startFrame": 200000,
                  "frames": 96000, "frequencyHz": 1000,
                  "steps": [ { "startFrame": 200000, "frames": 48000, "levelDb": -20 } ] } ] }
            """;

    private static final String AGAIN =
            " Correct the cue sheet or write the programme again with \"offtape prepare\".";

    @TempDir Path dir;

    @Test
    void theSheetIsGoodUntilItIsBroken() {
        CueSheet sheet = CueSheetJson.parse(GOOD, "p.json");
        assertEquals(4, sheet.cues().size());
        assertEquals(480_000, sheet.frames());
        assertEquals(null, sheet.tapeSpeedMmPerS());
        assertEquals(
                new Cue.Sweep("up", ChannelSet.LEFT, 120_000, 48_000, 20, 22_000, -20),
                sheet.cues().get(2));
    }

    @ParameterizedTest(name = "{0} -> {1}: {2}")
    @CsvFileSource(
            resources = "broken-fields.csv",
            delimiter = '|',
            quoteCharacter = '`',
            emptyValue = "",
            numLinesToSkip = 1)
    void wrongFieldsAreNamed(String right, String wrong, String fault) {
        String bad = GOOD.replace(right, wrong == null ? "" : wrong);
        assertNotEquals(GOOD, bad);
        assertRefused(bad, "p.json, " + fault + "." + AGAIN);
    }

    @ParameterizedTest
    @MethodSource
    void wrongTextsAreNamed(String text, String sentence) {
        assertRefused(text, sentence);
    }

    static Stream<Arguments> wrongTextsAreNamed() {
        String prepare = " Write the programme again with \"offtape prepare\".";
        String notObject = "p.json: the cue sheet is not a JSON object." + prepare;
        String tooLong =
                "p.json is nested more deeply, or holds a longer text or number, than any cue sheet."
                        + prepare;
        String notJson = "p.json is not valid JSON (line %d)." + prepare;
        return Stream.of(
                Arguments.of("", notObject),
                Arguments.of("   \n", notObject),
                Arguments.of("null", notObject),
                Arguments.of("[]", notObject),
                Arguments.of("\"offtape-programme\"", notObject),
                Arguments.of("{", notJson.formatted(1)),
                Arguments.of(GOOD.substring(0, GOOD.indexOf("3150")), notJson.formatted(6)),
                Arguments.of(GOOD + "{}", notJson.formatted(12)),
                Arguments.of(GOOD.strip() + " trailing", notJson.formatted(11)),
                Arguments.of(GOOD.replace("-18.0", "NaN"), notJson.formatted(2)),
                Arguments.of(GOOD.replace("-18.0", "-Infinity"), notJson.formatted(2)),
                Arguments.of(GOOD.replace("-18.0", "-018"), notJson.formatted(2)),
                Arguments.of(GOOD.replace("-18.0", "1" + "0".repeat(2000)), tooLong),
                Arguments.of(GOOD.replace("-18.0", "-18.0, \"version\": 1"), notJson.formatted(2)),
                Arguments.of(
                        GOOD.replace("\"levelDb\": 0.0", "\"levelDb\": 0.0, \"levelDb\": 0.0"),
                        notJson.formatted(6)),
                Arguments.of("{\"a\": " + "[".repeat(50_000), tooLong),
                Arguments.of("{\"a\": ".repeat(41) + "1" + "}".repeat(41), tooLong),
                Arguments.of("\u0000\u0001\u0002RIFF", notJson.formatted(1)),
                Arguments.of("{'format': 'offtape-programme'}", notJson.formatted(1)),
                Arguments.of("{ // a remark\n}", notJson.formatted(1)),
                Arguments.of("{\"a\": \"" + "x".repeat(100_001) + "\"}", tooLong),
                Arguments.of(
                        GOOD.replaceAll("(?s)\"cues\".*", "\"cues\": [1]}"),
                        "p.json: cue 1 is not a JSON object." + prepare),
                Arguments.of(
                        GOOD.replaceAll(
                                "(?s)\"cues\".*", "\"cues\": [" + "{},".repeat(10_000) + "{}]}"),
                        "p.json, the cue sheet: cues has more than 10000 entries." + AGAIN));
    }

    /** A byte order mark, as some editors leave it, is no fault. */
    @Test
    void aByteOrderMarkIsPassedOver() throws IOException {
        Path file = Files.writeString(dir.resolve("programme.json"), "\uFEFF" + GOOD);
        assertEquals(CueSheetJson.parse(GOOD, "p.json"), CueSheetJson.read(file));
    }

    @Test
    void cuesAreSortedByTheirStart() {
        String late = GOOD.replace("\"startFrame\": 0", "\"startFrame\": 400000");
        assertEquals("start", CueSheetJson.parse(late, "p.json").cues().get(3).id());
    }

    @Test
    void filesThatAreNoTextAreRefused() throws IOException {
        Path file = dir.resolve("programme.json");
        String unreadable =
                "The cue sheet "
                        + file
                        + " cannot be read. Give the folder that \"offtape prepare\" wrote, with"
                        + " programme.json and programme.wav in it.";
        assertFileRefused(file, unreadable);
        Files.write(file, new byte[] {(byte) 0xC3, (byte) 0x28, (byte) 0xFF, 0});
        assertFileRefused(file, unreadable);
        Files.write(file, GOOD.getBytes(StandardCharsets.UTF_16));
        assertFileRefused(file, unreadable);
        Files.write(file, new byte[(4 << 20) + 1]);
        assertFileRefused(
                file,
                file
                        + " is too large for a cue sheet (over 4 MB). Give the folder that \"offtape"
                        + " prepare\" wrote.");
        Files.delete(file);
        Files.createDirectory(file);
        assertFileRefused(file, unreadable);
    }

    private static void assertFileRefused(Path file, String sentence) {
        Exception e = assertThrows(UnusableInputException.class, () -> CueSheetJson.read(file));
        assertEquals(sentence, e.getMessage());
    }

    private static void assertRefused(String text, String sentence) {
        Exception e =
                assertThrows(
                        UnusableInputException.class, () -> CueSheetJson.parse(text, "p.json"));
        assertEquals(sentence, e.getMessage());
    }
}
