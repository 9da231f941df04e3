package offtape.cli.command;

import static offtape.cli.command.Lab.Case.of;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Programme folders that cannot be used: exit code 3, a sentence, and nothing written. */
class BadProgrammeTest {

    @TempDir private static Path folder;

    private static Lab lab;
    private static String sheet;
    private static byte[] sound;

    @BeforeAll
    static void aWorkshop() {
        lab = new Lab(folder);
        sheet =
                new String(
                        lab.bytes(lab.programme().resolve("programme.json")),
                        StandardCharsets.UTF_8);
        sound = lab.bytes(lab.programme().resolve("programme.wav"));
    }

    @ParameterizedTest
    @MethodSource
    void isRefused(Lab.Case c) {
        lab.check(c);
    }

    static Stream<Lab.Case> isRefused() {
        return Stream.of(
                of("absent", 3, "?", l -> measure(l.path("nowhere"))),
                of("a file", 3, "?", l -> measure(l.programme().resolve("programme.json"))),
                of("without sound", 3, "?", l -> measure(folder("mute", sheet, null))),
                of("without cue sheet", 3, "?", l -> measure(folder("sheetless", null, sound))),
                of("sheet is no JSON", 3, "?", l -> with("nojson", "{\"format\":\n oops")),
                of("sheet is empty", 3, "?", l -> with("empty", "")),
                of("sheet is no object", 3, "?", l -> with("list", "[1, 2]")),
                of("sheet ends early", 3, "?", l -> with("early", sheet.substring(0, 700))),
                of("more after the sheet", 3, "?", l -> with("more", sheet + "{}")),
                of("sheet of another kind", 3, "?", l -> swap("kind", "programme\"", "results\"")),
                of("version of the future", 3, "?", l -> swap("v2", "ion\" : 1", "ion\" : 2")),
                of("nested without end", 3, "?", l -> with("deep", "[".repeat(100_000))),
                of("a number without end", 3, "?", l -> swap("huge", "48000", "9".repeat(5000))),
                of("a number too large", 3, "?", l -> swap("large", "48000", "1e999")),
                of("a rate that is text", 3, "?", l -> swap("text", "48000", "\"48000\"")),
                of("half a frame", 3, "?", l -> swap("half", "52800", "52800.5")),
                of("a member twice", 3, "?", l -> swap("twice", "\"kind\" :", "\"id\" :")),
                of("a cue beyond the end", 3, "?", l -> swap("far", "52800", "99999999")),
                of("a cue of unknown kind", 3, "?", l -> swap("odd", "\"tone\"", "\"chord\"")),
                of("two cues of one name", 3, "?", l -> swap("same", "\"end\"", "\"start\"")),
                of("no cues", 3, "?", l -> measure(folder("bare", bare(), sound))),
                of("a sheet of 5 MB", 3, "?", l -> with("big", sheet + " ".repeat(5 << 20))),
                of(
                        "sound at another rate",
                        3,
                        "?",
                        l -> measure(folder("rate", sheet, Lab.patched(sound, 60, 44_100)))),
                of(
                        "sound too short",
                        3,
                        "?",
                        l -> measure(folder("short", sheet, Arrays.copyOf(sound, 600_000)))),
                of(
                        "sound is no WAV",
                        3,
                        "?",
                        l -> measure(folder("page", sheet, "<html>".getBytes(UTF_8)))));
    }

    private static final java.nio.charset.Charset UTF_8 = StandardCharsets.UTF_8;

    private static String bare() {
        return "{\"format\": \"offtape-programme\", \"version\": 1, \"sampleRate\": 48000,"
                + " \"frames\": 100, \"referenceDbfs\": -18, \"cues\": []}";
    }

    private static Object[] measure(Path programme) {
        return lab.measure(lab.programme().resolve("programme.wav"), programme);
    }

    private static Object[] with(String name, String sheetText) {
        return measure(folder(name, sheetText, sound));
    }

    private static Object[] swap(String name, String from, String to) {
        if (!sheet.contains(from)) {
            throw new IllegalArgumentException(from + " is not in " + sheet);
        }
        return with(name, sheet.replace(from, to));
    }

    private static Path folder(String name, String sheetText, byte[] soundBytes) {
        if (sheetText != null) {
            lab.file(name + "/programme.json", sheetText);
        }
        if (soundBytes != null) {
            lab.file(name + "/programme.wav", soundBytes);
        }
        return lab.path(name);
    }
}
