package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Several returns on one command line. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ReplaysTest {

    @TempDir private static Path root;

    private static Lab lab;
    private static Path first;
    private static Path second;

    @BeforeAll
    static void record() {
        lab = new Lab(root);
        Path machine =
                lab.file(
                        "machine.json",
                        """
                        {"format": "offtape-machine", "version": 1, "mode": "two-pass",
                         "transport": {"components": [{"frequencyHz": 4, "peakPercent": 0.1}]},
                         "recorder": {"startSeconds": 0.5, "tailSeconds": 0.5, "noiseDbfs": -90}}
                        """);
        first = replay(machine, 1);
        second = replay(machine, 2);
        lab.same("again.wav", first);
        lab.wav("other.wav", Lab.noise(3, 0.1, 30));
    }

    private static Path replay(Path machine, int number) {
        Path file = lab.path("replay-" + number + ".wav");
        Tool.Outcome outcome =
                Tool.run(
                        "simulate",
                        "--programme",
                        lab.programme(),
                        "--machine",
                        machine,
                        "--replay",
                        number,
                        "--out",
                        file);
        assertEquals(0, outcome.code(), outcome.err());
        return file;
    }

    private static Object[] measure(Path... returns) {
        Object[] line =
                Lab.line("measure", "--programme", lab.programme(), "--out", lab.path("session"));
        return Lab.line(line, (Object[]) returns);
    }

    static Stream<Lab.Case> refusals() {
        return Stream.of(
                Lab.Case.of(
                        "off tape",
                        2,
                        "Several returns are replays of one tape, and off-tape has one return:"
                                + " measure each on its own, or say --mode two-pass or --mode"
                                + " reference-tape. See \"offtape measure --help\".",
                        l -> Lab.line(measure(first, second), "--mode", "off-tape")),
                Lab.Case.of(
                        "a loopback",
                        2,
                        "Several returns are replays of one tape, and loopback has one return:"
                                + " measure each on its own, or say --mode two-pass or --mode"
                                + " reference-tape. See \"offtape measure --help\".",
                        l -> Lab.line(measure(first, second), "--mode", "loopback")),
                Lab.Case.of(
                        "one recording under two names",
                        3,
                        "{lab}/replay-1.wav and {lab}/again.wav are one and the same recording."
                                + " Give each replay once.",
                        l -> measure(first, l.path("again.wav"))),
                Lab.Case.of(
                        "another programme",
                        3,
                        "The programme was not found in other.wav. Check that this is the return of"
                                + " the programme in the folder given with --programme, that its"
                                + " level is not too low, and that the tape ran within 20 % of its"
                                + " speed or at half or twice that.",
                        l -> measure(first, l.path("other.wav"))),
                Lab.Case.of(
                        "no such replay",
                        2,
                        "--replay must lie between 1 and 1000. See \"offtape simulate --help\".",
                        l ->
                                Lab.line(
                                        "simulate",
                                        "--programme",
                                        l.programme(),
                                        "--machine",
                                        l.path("machine.json"),
                                        "--out",
                                        l.path("x.wav"),
                                        "--replay",
                                        0)));
    }

    @ParameterizedTest
    @MethodSource("refusals")
    void refusedInWords(Lab.Case c) {
        lab.check(c);
    }

    /**
     * Three seconds of the speed tone are missing from the second: its other tones do not count.
     */
    @Test
    void aReplayThatBreaksOffHasNoReadings() {
        byte[] whole = lab.bytes(second);
        Path cut = lab.file("cut.wav", Arrays.copyOf(whole, (int) (whole.length * 19L / 23)));
        Tool.Outcome outcome = Tool.run(Lab.line(measure(first, cut), "--force"));
        assertEquals(0, outcome.code(), outcome.err());
        assertTrue(
                outcome.err()
                        .contains(
                                "cut.wav has no readings of wow and flutter: The speed tone is not"
                                        + " whole in this replay."),
                outcome.err());
    }

    /** Two replays with one line each: every reading is told, and that they tell no more. */
    @Test
    void twoReplaysAreMeasured() {
        Object[] line = Lab.line(measure(first, second), "--force");
        Tool.Outcome outcome = Tool.run(line);
        assertEquals(0, outcome.code(), outcome.err());
        assertTrue(outcome.err().contains("[2/3] Measuring replay-2.wav"), outcome.err());
        assertTrue(outcome.err().contains("mean speed in replay-1.wav"), outcome.err());
        assertTrue(outcome.err().contains("the mean of these"), outcome.err());
        assertTrue(Files.exists(lab.path("session/speed-passes.csv")));
    }
}
