package offtape.cli.command;

import static offtape.cli.command.Lab.Case.of;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Arrays;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Where outputs may go, where not, and what --force may do. */
class OutputPlaceTest {

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
                of(
                        "a file in the way",
                        2,
                        "{lab}/file is a file, and a folder is needed. Choose another --out.",
                        l -> prepare(l.file("file", "mine"))),
                of(
                        "a file above",
                        2,
                        "{lab}/up/a/b cannot be made because {lab}/up is a file and "
                                + "not a folder. Choose another --out.",
                        l -> prepare(l.file("up", "mine").resolve("a/b"))),
                of(
                        "a folder of the user's",
                        2,
                        "{lab}/mine already holds files that were not written by this "
                                + "command, such as a.txt. Choose another --out or add --force.",
                        l -> prepare(l.file("mine/a.txt", "mine").getParent())),
                of(
                        "a folder where a file is to go",
                        2,
                        "{lab}/odd/programme.wav is a folder where a file is to go. "
                                + "Move it or choose another --out.",
                        l ->
                                prepare(
                                        l.file("odd/programme.wav/a", "mine")
                                                .getParent()
                                                .getParent(),
                                        "--force")),
                of(
                        "a link that leads nowhere",
                        2,
                        "{lab}/link is a link that leads nowhere. Remove it or choose "
                                + "another --out.",
                        l -> prepare(link(l))),
                of(
                        "a measurement into the user's folder",
                        2,
                        "{lab}/own already holds files that were not written by this "
                                + "command, such as b.txt. Choose another --out or add --force.",
                        l ->
                                Stream.concat(
                                                Stream.of(l.measure(l.path("x.wav"))).limit(5),
                                                Stream.of(l.file("own/b.txt", "mine").getParent()))
                                        .toArray()),
                of(
                        "a demo into the user's folder",
                        2,
                        "{lab}/his already holds files that were not written by this "
                                + "command, such as c.txt. Choose another --out or add --force.",
                        l -> Lab.line("demo", "--out", l.file("his/c.txt", "mine").getParent())));
    }

    @Test
    void aFolderOfOursIsWrittenAgain() {
        Path out = lab.path("again");
        assertEquals(0, Tool.run(prepare(out)).code());
        byte[] first = lab.bytes(out.resolve("programme.wav"));
        assertEquals(0, Tool.run(prepare(out, "--reference-level", "-20")).code());
        assertFalse(Arrays.equals(first, lab.bytes(out.resolve("programme.wav"))));
    }

    @Test
    void whatTheUserChangedIsNotOverwrittenWithoutForce() {
        Path out = lab.path("changed");
        Tool.run(prepare(out));
        Path sheet = lab.file("changed/programme.json", "{ my own remarks }");
        Path other = lab.file("changed/notes.txt", "mine");
        lab.check(
                of(
                        "a file of ours that was changed",
                        2,
                        "{lab}/changed/programme.json was changed since it was written, and the"
                                + " change would be lost. Choose another --out or add --force.",
                        l -> prepare(out)));
        assertEquals(0, Tool.run(prepare(out, "--force")).code());
        assertTrue(text(sheet).contains("offtape-programme"));
        assertEquals("mine", text(other));
    }

    @Test
    void forceWritesIntoAFolderOfTheUserAndLeavesTheRestAlone() {
        Path other = lab.file("shared/notes.txt", "mine");
        assertEquals(0, Tool.run(prepare(other.getParent(), "--force")).code());
        assertEquals("mine", text(other));
        assertEquals(
                Set.of(
                        "notes.txt",
                        "programme.json",
                        "programme.wav",
                        "set-up.html",
                        ".offtape-manifest.json"),
                lab.namesIn("shared"));
    }

    @Test
    void forceReplacesAReturn() {
        lab.file("plain.json", "{\"format\": \"offtape-machine\", \"version\": 1}");
        Path out = lab.file("sim/return.wav", "mine");
        Object[] line =
                Lab.line(
                        "simulate",
                        "--programme",
                        lab.programme(),
                        "--machine",
                        lab.path("plain.json"),
                        "--out",
                        out);
        assertEquals(2, Tool.run(line).code());
        assertEquals("mine", text(out));
        Object[] forced = Stream.concat(Stream.of(line), Stream.of("--force")).toArray();
        assertEquals(0, Tool.run(forced).code());
        assertEquals("RIFF", new String(lab.bytes(out), 0, 4, StandardCharsets.US_ASCII));
        assertEquals(
                Set.of("return.wav", "return.truth.json", "return.motion.csv"), lab.namesIn("sim"));
    }

    /** Where permissions bind, as they do for everybody but the system's administrator. */
    @Test
    void aProtectedPlaceIsRefused() throws IOException {
        Path locked = Files.createDirectory(lab.path("locked"));
        Set<PosixFilePermission> rights = Files.getPosixFilePermissions(locked);
        Files.setPosixFilePermissions(locked, PosixFilePermissions.fromString("r-xr-xr-x"));
        Tool.Outcome inside = Tool.run(prepare(locked.resolve("new")));
        boolean bound = !Files.isWritable(locked);
        Files.setPosixFilePermissions(locked, rights);
        assertEquals(bound ? 2 : 0, inside.code(), inside.err());
        assertEquals(bound ? Set.of() : Set.of("new"), lab.namesIn("locked"));
    }

    @Test
    void namesMayHoldSpacesAndAnyLetters() {
        Path out = lab.path("Vor dem Überholen – 磁帯/erste Seite");
        assertEquals(0, Tool.run(prepare(out)).code());
        Path recording =
                lab.file("Rück lauf @1 %s {0}.wav", lab.bytes(out.resolve("programme.wav")));
        Path session = lab.path("Sitzung ä ö");
        Tool.Outcome outcome = Tool.run("measure", recording, "--programme", out, "--out", session);
        assertEquals(0, outcome.code(), outcome.err());
        assertTrue(outcome.err().contains("Measuring Rück lauf @1 %s {0}.wav"), outcome.err());
        assertTrue(outcome.err().contains("Sitzung ä ö/report.html"), outcome.err());
    }

    private static String text(Path file) {
        return new String(lab.bytes(file), StandardCharsets.UTF_8);
    }

    private static Object[] prepare(Path out, String... more) {
        return Stream.concat(Stream.of("prepare", "--short", "--out", out), Stream.of(more))
                .toArray();
    }

    private static Path link(Lab l) {
        try {
            return Files.createSymbolicLink(l.path("link"), l.path("gone"));
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }
}
