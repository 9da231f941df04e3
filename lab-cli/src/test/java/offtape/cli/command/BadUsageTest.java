package offtape.cli.command;

import static offtape.cli.command.Lab.Case.of;

import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Words that are not understood, and bare tones that are none. */
class BadUsageTest {

    @TempDir private static Path folder;

    private static Lab lab;

    @BeforeAll
    static void aWorkshop() {
        lab = new Lab(folder);
    }

    @ParameterizedTest
    @MethodSource
    void isRefused(Lab.Case c) {
        lab.check(c);
    }

    static Stream<Lab.Case> isRefused() {
        return Stream.of(
                of("nothing at all", 2, "?", l -> Lab.line()),
                of("no such command", 2, "?", l -> Lab.line("polish")),
                of("no such option", 2, "?", l -> Lab.line("--polish")),
                of("no such option of a command", 2, "?", l -> prepare("--polish")),
                of("without --out", 2, "?", l -> Lab.line("prepare")),
                of("without return", 2, "?", l -> Lab.line("measure", "--out", "x")),
                of("option without value", 2, "?", l -> Lab.line("prepare", "--out")),
                of("one word too many", 2, "?", l -> Lab.line("speed", "a.wav", "b.wav")),
                of(
                        "an option twice",
                        2,
                        "?",
                        l -> prepare("--sample-rate", "48000", "--sample-rate", "96000")),
                of("rate too low", 2, "?", l -> prepare("--sample-rate", "32000")),
                of("rate in words", 2, "?", l -> prepare("--sample-rate", "48k")),
                of("level in words", 2, "?", l -> prepare("--reference-level", "loud")),
                of("reference too high", 2, "?", l -> prepare("--reference-level", "-6")),
                of("reference is no number", 2, "?", l -> prepare("--reference-level", "NaN")),
                of("tape speed in words", 2, "?", l -> prepare("--tape-speed", "fast")),
                of("tape speed without unit", 2, "?", l -> prepare("--tape-speed", "19.05")),
                of("tape speed of no machine", 2, "?", l -> prepare("--tape-speed", "900ips")),
                of("mode that is not measured", 2, "?", l -> mode("off-tape")),
                of("no such mode", 2, "?", l -> mode("sideways")),
                of("frequency too low", 2, "?", l -> speed(l.path("x.wav"), "--frequency", "50")),
                of(
                        "frequency is no number",
                        2,
                        "?",
                        l -> speed(l.path("x.wav"), "--frequency", "NaN")),
                of("no file", 3, "?", l -> speed(l.path("x.wav"))),
                of("silence", 3, "?", l -> speed(l.wav("silence.wav", new double[480_000]))),
                of("noise", 3, "?", l -> speed(l.wav("noise.wav", Lab.noise(5, 0.1, 10)))),
                of(
                        "tone of three seconds",
                        3,
                        "?",
                        l -> speed(l.wav("brief.wav", Lab.tone(3150, 0.1, 3)))),
                of("tone too low", 3, "?", l -> speed(l.wav("low.wav", Lab.tone(100, 0.1, 8)))),
                of(
                        "tone of no usual frequency",
                        3,
                        "?",
                        l -> speed(l.wav("odd.wav", Lab.tone(2000, 0.1, 8)))),
                of(
                        "tone far from what was said",
                        3,
                        "?",
                        l ->
                                speed(
                                        l.wav("far.wav", Lab.tone(3150, 0.1, 8)),
                                        "--frequency",
                                        "1000")));
    }

    private static Object[] prepare(String option, String... more) {
        return Stream.concat(
                        Stream.of("prepare", "--out", lab.path("out"), option), Stream.of(more))
                .toArray();
    }

    private static Object[] mode(String mode) {
        return Stream.concat(Stream.of(lab.measure(lab.path("x.wav"))), Stream.of("--mode", mode))
                .toArray();
    }

    private static Object[] speed(Path file, String... more) {
        return Stream.concat(Stream.of("speed", file), Stream.of(more)).toArray();
    }
}
