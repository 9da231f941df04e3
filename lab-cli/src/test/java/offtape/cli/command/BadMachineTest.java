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
                of(
                        "absent",
                        3,
                        "{lab}/nowhere.json cannot be read. Check that it is there and "
                                + "may be read.",
                        l -> simulate(l.path("nowhere.json"), "r.wav")),
                of(
                        "a folder",
                        3,
                        "{lab}/programme cannot be read. Check that it is there and may be read.",
                        l -> simulate(l.programme(), "r.wav")),
                of("empty", 3, "{lab}/empty.json is empty.", l -> with("empty", "")),
                of(
                        "no JSON",
                        3,
                        "{lab}/nojson.json: this is not well-formed JSON (line 1, column 7).",
                        l -> with("nojson", "steady as a rock")),
                of(
                        "null",
                        3,
                        "{lab}/null.json holds no object but null.",
                        l -> with("null", "null")),
                of(
                        "no object",
                        3,
                        "{lab}/list.json: the value is not of the kind that belongs "
                                + "here (line 1, column 1).",
                        l -> with("list", "[]")),
                of(
                        "without format",
                        3,
                        "{lab}/plain.json: \"format\" must be \"offtape-machine\": "
                                + "this is no description of a machine.",
                        l -> with("plain", "{}")),
                of(
                        "another version",
                        3,
                        "{lab}/v7.json: \"version\" must be 1; no other is known here.",
                        l -> with("v7", "{\"format\":\"offtape-machine\",\"version\":7}")),
                of(
                        "unknown member",
                        3,
                        "{lab}/odd.json: the member \"colour\" is not known. Known "
                                + "here: bias, crosstalk, dropouts, electronics, format, heads, hiss, "
                                + "hum, mode, modulationNoise, name, note, recorder, replay, residue, saturation, "
                                + "seed, swapped, tapeSpeedMmPerS, transport, version.",
                        l -> with("odd", MACHINE + ", \"colour\": \"red\"}")),
                of(
                        "a member twice",
                        3,
                        "{lab}/twice.json: a member is there twice (line 1, column 62).",
                        l -> with("twice", MACHINE + ", \"seed\": 1, \"seed\": 2}")),
                of(
                        "out of range",
                        3,
                        "{lab}/range.json: hiss: \"levelDb\" is 200; it must lie "
                                + "between -160 and 0 dB.",
                        l -> with("range", MACHINE + ", \"hiss\": {\"levelDb\": 200}}")),
                of(
                        "text for a number",
                        3,
                        "{lab}/text.json: seed: the value is not of the kind that "
                                + "belongs here (line 1, column 53).",
                        l -> with("text", MACHINE + ", \"seed\": \"one\"}")),
                of(
                        "nested without end",
                        3,
                        "{lab}/deep.json: this is nested more deeply, or holds a longer text, "
                                + "name or number, than anything that belongs here.",
                        l -> with("deep", "{\"heads\":".repeat(50_000))),
                of(
                        "a number without end",
                        3,
                        "{lab}/huge.json: this is nested more deeply, or holds a longer text, "
                                + "name or number, than anything that belongs here.",
                        l -> with("huge", MACHINE + ", \"seed\": " + "9".repeat(5000) + "}")),
                of(
                        "a motion file that is not there",
                        3,
                        "The motion file {lab}/gone.csv cannot be read. Check the "
                                + "member transport.motion.csv.",
                        l ->
                                with(
                                        "motion",
                                        MACHINE
                                                + ", \"transport\": {\"motion\": {\"csv\": \"gone.csv\"}}}")),
                of(
                        "unknown mode",
                        2,
                        "Invalid value for option '--mode': \"mode\" must be one of "
                                + "reference-tape, two-pass, off-tape, loopback. See \"offtape "
                                + "simulate --help\".",
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
                        "{lab}/taken.wav exists already. Choose another name or add --force.",
                        l -> simulate(l.path("sane.json"), "taken.wav")),
                of(
                        "the truth is there already",
                        2,
                        "{lab}/taken-truth.truth.json exists already. Choose another "
                                + "name or add --force.",
                        l -> simulate(l.path("sane.json"), "taken-truth.wav")),
                of(
                        "a folder where the return is to go",
                        2,
                        "{lab}/programme is a folder, and a file is to go there. "
                                + "Choose another name.",
                        l -> simulate(l.path("sane.json"), "programme")),
                of(
                        "no programme",
                        3,
                        "{lab}/no is not a folder. Give the folder that \"offtape prepare\" wrote.",
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
