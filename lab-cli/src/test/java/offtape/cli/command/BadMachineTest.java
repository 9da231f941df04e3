package offtape.cli.command;

import static offtape.cli.command.Lab.Case.of;

import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Machines that cannot be simulated: a sentence, and nothing written. */
class BadMachineTest {

    @TempDir private static Path folder;

    private static Lab lab;

    @BeforeAll
    static void aWorkshop() {
        lab = new Lab(folder);
        lab.file("taken.wav", "a recording of the user's");
        lab.file("taken-truth.truth.json", "a file of the user's");
        lab.file("sane.json", MACHINE + "}");
    }

    private static final String MACHINE = "{\"format\": \"offtape-machine\", \"version\": 1";

    @ParameterizedTest
    @MethodSource
    void isRefused(Lab.Case c) {
        lab.check(c);
    }

    static Stream<Lab.Case> isRefused() {
        return Stream.of(
                of("absent", 3, "?", l -> simulate(l.path("nowhere.json"), "r.wav")),
                of("a folder", 3, "?", l -> simulate(l.programme(), "r.wav")),
                of("empty", 3, "?", l -> with("empty", "")),
                of("no JSON", 3, "?", l -> with("nojson", "steady as a rock")),
                of("null", 3, "?", l -> with("null", "null")),
                of("no object", 3, "?", l -> with("list", "[]")),
                of("without format", 3, "?", l -> with("plain", "{}")),
                of(
                        "another version",
                        3,
                        "?",
                        l -> with("v7", "{\"format\":\"offtape-machine\",\"version\":7}")),
                of("unknown member", 3, "?", l -> with("odd", MACHINE + ", \"colour\": \"red\"}")),
                of(
                        "a member twice",
                        3,
                        "?",
                        l -> with("twice", MACHINE + ", \"seed\": 1, \"seed\": 2}")),
                of(
                        "out of range",
                        3,
                        "?",
                        l -> with("range", MACHINE + ", \"hiss\": {\"levelDb\": 200}}")),
                of(
                        "text for a number",
                        3,
                        "?",
                        l -> with("text", MACHINE + ", \"seed\": \"one\"}")),
                of("nested without end", 3, "?", l -> with("deep", "{\"heads\":".repeat(50_000))),
                of(
                        "a number without end",
                        3,
                        "?",
                        l -> with("huge", MACHINE + ", \"seed\": " + "9".repeat(5000) + "}")),
                of(
                        "a motion file that is not there",
                        3,
                        "?",
                        l ->
                                with(
                                        "motion",
                                        MACHINE
                                                + ", \"transport\": {\"motion\": {\"csv\": \"gone.csv\"}}}")),
                of(
                        "unknown mode",
                        2,
                        "?",
                        l ->
                                Lab.line(
                                        "simulate",
                                        "--programme",
                                        l.programme(),
                                        "--machine",
                                        l.path("sane.json"),
                                        "--out",
                                        l.path("r.wav"),
                                        "--mode",
                                        "sideways")),
                of(
                        "the return is there already",
                        2,
                        "?",
                        l -> simulate(l.path("sane.json"), "taken.wav")),
                of(
                        "the truth is there already",
                        2,
                        "?",
                        l -> simulate(l.path("sane.json"), "taken-truth.wav")),
                of(
                        "a folder where the return is to go",
                        2,
                        "?",
                        l -> simulate(l.path("sane.json"), "programme")),
                of(
                        "no programme",
                        3,
                        "?",
                        l ->
                                Lab.line(
                                        "simulate",
                                        "--programme",
                                        l.path("no"),
                                        "--machine",
                                        l.path("sane.json"),
                                        "--out",
                                        l.path("r.wav"))));
    }

    private static Object[] with(String name, String machine) {
        return simulate(lab.file(name + ".json", machine), "r.wav");
    }

    private static Object[] simulate(Path machine, String out) {
        return Lab.line(
                "simulate",
                "--programme",
                lab.programme(),
                "--machine",
                machine,
                "--out",
                lab.path(out));
    }
}
