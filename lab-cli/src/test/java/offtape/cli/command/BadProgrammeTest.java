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
                of(
                        "absent",
                        3,
                        "{lab}/nowhere is not a folder. Give the folder that \"offtape "
                                + "prepare\" wrote.",
                        l -> measure(l.path("nowhere"))),
                of(
                        "a file",
                        3,
                        "{lab}/programme/programme.json is not a folder. Give the "
                                + "folder that \"offtape prepare\" wrote.",
                        l -> measure(l.programme().resolve("programme.json"))),
                of(
                        "without sound",
                        3,
                        "There is no file {lab}/mute/programme.wav. Check the name and the folder.",
                        l -> measure(folder("mute", sheet, null))),
                of(
                        "without cue sheet",
                        3,
                        "The cue sheet {lab}/sheetless/programme.json cannot be read. "
                                + "Give the folder that \"offtape prepare\" wrote, with "
                                + "programme.json and programme.wav in it.",
                        l -> measure(folder("sheetless", null, sound))),
                of(
                        "sheet is no JSON",
                        3,
                        "{lab}/nojson/programme.json is not valid JSON (line 2). Write "
                                + "the programme again with \"offtape prepare\".",
                        l -> with("nojson", "{\"format\":\n oops")),
                of(
                        "sheet is empty",
                        3,
                        "{lab}/empty/programme.json: the cue sheet is not a JSON "
                                + "object. Write the programme again with \"offtape prepare\".",
                        l -> with("empty", "")),
                of(
                        "sheet is no object",
                        3,
                        "{lab}/list/programme.json: the cue sheet is not a JSON "
                                + "object. Write the programme again with \"offtape prepare\".",
                        l -> with("list", "[1, 2]")),
                of(
                        "sheet ends early",
                        3,
                        "{lab}/early/programme.json is not valid JSON (line 35). Write "
                                + "the programme again with \"offtape prepare\".",
                        l -> with("early", sheet.substring(0, 700))),
                of(
                        "more after the sheet",
                        3,
                        "{lab}/more/programme.json is not valid JSON (line 146). Write "
                                + "the programme again with \"offtape prepare\".",
                        l -> with("more", sheet + "{}")),
                of(
                        "sheet of another kind",
                        3,
                        "{lab}/kind/programme.json, the cue sheet: format is not "
                                + "\"offtape-programme\". Correct the cue sheet or write the "
                                + "programme again with \"offtape prepare\".",
                        l -> swap("kind", "programme\"", "results\"")),
                of(
                        "version of the future",
                        3,
                        "{lab}/v2/programme.json, the cue sheet: version 2 is not "
                                + "known to this release; it reads version 1. Correct the cue "
                                + "sheet or write the programme again with \"offtape prepare\".",
                        l -> swap("v2", "ion\" : 1", "ion\" : 2")),
                of(
                        "nested without end",
                        3,
                        "{lab}/deep/programme.json is nested more deeply, or holds a longer text or"
                                + " number, than any cue sheet. Write the programme again with"
                                + " \"offtape prepare\".",
                        l -> with("deep", "[".repeat(100_000))),
                of(
                        "a number without end",
                        3,
                        "{lab}/huge/programme.json is nested more deeply, or holds a longer text or"
                                + " number, than any cue sheet. Write the programme again with"
                                + " \"offtape prepare\".",
                        l -> swap("huge", "48000", "9".repeat(5000))),
                of(
                        "a number too large",
                        3,
                        "{lab}/large/programme.json, the cue sheet: sampleRate must "
                                + "lie between 8000 and 768000. Correct the cue sheet or write "
                                + "the programme again with \"offtape prepare\".",
                        l -> swap("large", "48000", "1e999")),
                of(
                        "a rate that is text",
                        3,
                        "{lab}/text/programme.json, the cue sheet: sampleRate is "
                                + "missing or not a whole number. Correct the cue sheet or write "
                                + "the programme again with \"offtape prepare\".",
                        l -> swap("text", "48000", "\"48000\"")),
                of(
                        "half a frame",
                        3,
                        "{lab}/half/programme.json, cue \"reference\": startFrame is "
                                + "missing or not a whole number. Correct the cue sheet or write "
                                + "the programme again with \"offtape prepare\".",
                        l -> swap("half", "52800", "52800.5")),
                of(
                        "a member twice",
                        3,
                        "{lab}/twice/programme.json is not valid JSON (line 11). Write "
                                + "the programme again with \"offtape prepare\".",
                        l -> swap("twice", "\"kind\" :", "\"id\" :")),
                of(
                        "a cue beyond the end",
                        3,
                        "{lab}/far/programme.json, cue \"reference\": startFrame must "
                                + "lie between 0 and 1070399. Correct the cue sheet or write the "
                                + "programme again with \"offtape prepare\".",
                        l -> swap("far", "52800", "99999999")),
                of(
                        "a cue of unknown kind",
                        3,
                        "{lab}/odd/programme.json, cue \"reference\": kind \"chord\" "
                                + "is not known; marker, tone, sweep, ladder and silence are. "
                                + "Correct the cue sheet or write the programme again with "
                                + "\"offtape prepare\".",
                        l -> swap("odd", "\"tone\"", "\"chord\"")),
                of(
                        "two cues of one name",
                        3,
                        "{lab}/same/programme.json, the cue sheet: two cues have the "
                                + "id \"start\". Correct the cue sheet or write the programme "
                                + "again with \"offtape prepare\".",
                        l -> swap("same", "\"end\"", "\"start\"")),
                of(
                        "no cues",
                        3,
                        "The cue sheet names no marker, so the programme cannot be "
                                + "placed. Write the programme again with \"offtape prepare\".",
                        l -> measure(folder("bare", bare(), sound))),
                of(
                        "a sheet of 5 MB",
                        3,
                        "{lab}/big/programme.json is too large for a cue sheet (over 4 "
                                + "MB). Give the folder that \"offtape prepare\" wrote.",
                        l -> with("big", sheet + " ".repeat(5 << 20))),
                of(
                        "sound at another rate",
                        3,
                        "{lab}/rate: programme.wav has 44100 frames a second, the cue "
                                + "sheet says 48000, so the two do not belong together. Write "
                                + "the programme again with \"offtape prepare\".",
                        l ->
                                measure(
                                        folder(
                                                "rate",
                                                sheet,
                                                Lab.patched(
                                                        sound,
                                                        Lab.body(sound, "fmt ") + 4,
                                                        44_100)))),
                of(
                        "sound too short",
                        3,
                        "{lab}/short: programme.wav has 99878 frames, the cue sheet "
                                + "says 1070400, so the two do not belong together. Write the "
                                + "programme again with \"offtape prepare\".",
                        l -> measure(folder("short", sheet, Arrays.copyOf(sound, 600_000)))),
                of(
                        "sound is no WAV",
                        3,
                        "{lab}/page/programme.wav is only 6 bytes long and no sound "
                                + "file. Export or copy the recording again.",
                        l ->
                                measure(
                                        folder(
                                                "page",
                                                sheet,
                                                "<html>".getBytes(StandardCharsets.UTF_8)))));
    }

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
        if (soundBytes == sound) {
            lab.same(name + "/programme.wav", lab.programme().resolve("programme.wav"));
        } else if (soundBytes != null) {
            lab.file(name + "/programme.wav", soundBytes);
        }
        return lab.path(name);
    }
}
