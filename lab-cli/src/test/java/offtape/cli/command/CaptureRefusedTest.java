package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import offtape.cli.sound.SoundLayers;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What a capture is refused for, before a device is opened and without a trace on the disk. */
class CaptureRefusedTest {

    private static final String SEE = " See \"offtape capture --help\".";

    private static final String BY_SHEET =
            "The programme reaches -18.0 dBFS, above the highest level of -20.0 dBFS that was"
                    + " allowed. Write one with a lower --reference-level, and raise the machine's"
                    + " record level instead.";

    @TempDir private Path folder;

    private CaptureBench bench;

    @BeforeEach
    void aBench() {
        bench = new CaptureBench(folder);
    }

    /** Words at the end of the line, and the answer. */
    record Case(int code, String sentence, List<String> words) {

        static Case of(int code, String sentence, String... words) {
            return new Case(code, sentence, List.of(words));
        }
    }

    @ParameterizedTest
    @MethodSource
    void isRefused(Case c) {
        Tool.Outcome outcome = bench.capture(c.words().toArray());
        assertEquals(new Tool.Outcome(c.code(), "", "offtape: " + c.sentence() + "\n"), outcome);
        assertEquals(Set.of("programme"), bench.names());
        assertTrue(bench.layer.requests.isEmpty());
    }

    static Stream<Case> isRefused() {
        return Stream.of(
                Case.of(2, BY_SHEET, "--max-level", "-20"),
                Case.of(2, "The highest level lies from -100 to 0 dBFS." + SEE, "--max-level", "3"),
                Case.of(
                        2,
                        "Recording goes on for 0.5 to 600 seconds: give --tail so." + SEE,
                        "--tail",
                        "0.4"),
                Case.of(
                        2,
                        "Recording goes on for 0.5 to 600 seconds: give --tail so." + SEE,
                        "--tail",
                        "NaN"),
                Case.of(
                        2,
                        "The system holds 20 to 2000 milliseconds of sound, not 19: give --buffer"
                                + " in that range."
                                + SEE,
                        "--buffer",
                        "19"),
                Case.of(
                        2,
                        "Invalid value for option '--output-channels': Channels are counted from 1"
                                + " to 64."
                                + SEE,
                        "--output-channels",
                        "0,1"),
                Case.of(
                        2,
                        "Invalid value for option '--input-channels': A channel cannot be used"
                                + " twice."
                                + SEE,
                        "--input-channels",
                        "2,2"),
                Case.of(
                        2,
                        "Invalid value for option '--input-channels': \"left\" names no channels;"
                                + " write 5,6 for instance."
                                + SEE,
                        "--input-channels",
                        "left"),
                Case.of(
                        4,
                        "There is no sound layer \"magic\" here; there are: loop.",
                        "--layer",
                        "magic"));
    }

    @Test
    void aProgrammeThatIsNotThereIsUnusable() throws IOException {
        Files.delete(bench.path("programme/programme.json"));
        assertEquals(3, bench.capture().code());
        assertTrue(bench.layer.requests.isEmpty());
    }

    @Test
    void aPlaceThatIsNoneIsRefused() throws IOException {
        Files.writeString(bench.path("up"), "a file");
        Tool.Outcome outcome =
                Tool.run(
                        new SoundLayers(List.of(bench.layer)),
                        "capture",
                        "--programme",
                        bench.path("programme"),
                        "--out",
                        bench.path("up/return.wav"));
        assertEquals(2, outcome.code());
        assertTrue(bench.layer.requests.isEmpty());
    }

    @Test
    void aDeviceThatDoesNotOpenLeavesNoTrace() {
        bench.layer.trouble = "The output \"A\" is out.";
        assertEquals(
                new Tool.Outcome(4, "", "offtape: The output \"A\" is out.\n"), bench.capture());
        assertEquals(Set.of("programme"), bench.names());
    }

    /** Its sheet says −18 dBFS; the sound that lies beside it is the loud one, −6.0 dBFS. */
    @Test
    void aProgrammeThatIsLouderThanItSaysIsNotPlayed() throws IOException {
        double[] loud = Lab.tone(1000, 0.5, 1);
        Files.write(bench.path("loud.wav"), Wav.PCM_24.of(CaptureBench.RATE, loud, loud));
        Files.move(
                bench.path("loud.wav"),
                bench.path("programme/programme.wav"),
                StandardCopyOption.REPLACE_EXISTING);
        Tool.Outcome outcome = bench.capture("--max-level", "-12");
        assertEquals(2, outcome.code());
        assertTrue(
                outcome.err()
                        .contains(
                                "programme.wav\" reaches -6.0 dBFS, above the highest level of"
                                        + " -12.0 dBFS that was allowed. Allow more with"
                                        + " --max-level."),
                outcome.err());
        assertEquals(Set.of("programme"), bench.names());
    }
}
