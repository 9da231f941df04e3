package offtape.core.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import offtape.core.fault.RefusedOutputException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Files that appear together or not at all. */
class OutputFolderTest {

    /** SHA-256 of "abc" (FIPS 180-4, worked example). */
    private static final String ABC =
            "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

    private static final String MANIFEST = ".offtape-manifest.json";

    @TempDir Path temp;
    private Path dir;

    @BeforeEach
    void real() throws IOException {
        dir = temp.toRealPath();
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static void write(Path target, boolean force, String name, String content) {
        try (OutputFolder out = OutputFolder.open(target, force)) {
            out.write(name, bytes(content));
            out.commit();
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"session", "new/deep/session", "mit Leerzeichen/Gerät ②"})
    void anAbsentFolderAppearsWhole(String name) throws IOException {
        Path target = dir.resolve(name);
        try (OutputFolder out = OutputFolder.open(target, false)) {
            assertEquals(target, out.directory());
            out.write("results.json", bytes("abc"));
            Files.writeString(out.path("csv/speed.csv"), "abc");
            assertFalse(Files.exists(target));
            out.commit();
        }
        String manifest =
                """
                {
                  "format" : "offtape-manifest",
                  "version" : 1,
                  "files" : [
                    {
                      "name" : "csv/speed.csv",
                      "sha256" : "%1$s"
                    },
                    {
                      "name" : "results.json",
                      "sha256" : "%1$s"
                    }
                  ]
                }"""
                        .formatted(ABC);
        assertEquals(
                Map.of(
                        "csv/",
                        "",
                        "csv/speed.csv",
                        "abc",
                        "results.json",
                        "abc",
                        MANIFEST,
                        manifest),
                Tree.of(target));
        assertEquals(Set.of(target.getFileName()), siblings(target));
    }

    private static Set<Path> siblings(Path target) throws IOException {
        try (var all = Files.list(target.getParent())) {
            return all.map(Path::getFileName).collect(Collectors.toSet());
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"session", "new/deep/session"})
    void withoutCommitEverythingIsAsItWas(String name) throws IOException {
        Tree.write(dir.resolve("mine.txt"), "mine");
        try (OutputFolder out = OutputFolder.open(dir.resolve(name), false)) {
            out.write("a/results.json", bytes("abc"));
        }
        assertEquals(Map.of("mine.txt", "mine"), Tree.of(dir));
    }

    @Test
    void withoutCommitAnExistingFolderIsAsItWas() throws IOException {
        Path target = dir.resolve("s");
        write(target, false, "a", "one");
        Map<String, String> before = Tree.of(dir);
        try (OutputFolder out = OutputFolder.open(target, false)) {
            out.write("a", bytes("two"));
            out.write("b", bytes("two"));
        }
        assertEquals(before, Tree.of(dir));
    }

    @Test
    void whatWeWroteIsReplacedAndWhatTheUserAddedStays() throws IOException {
        Path target = dir.resolve("s");
        write(target, false, "a", "one");
        write(target, false, "old", "abc");
        Tree.write(target.resolve("notes.txt"), "mine");
        write(target, false, "a", "two");
        Map<String, String> after = Tree.of(target);
        assertEquals(Set.of("a", "old", "notes.txt", MANIFEST), after.keySet());
        assertEquals("two", after.get("a"));
        assertEquals("mine", after.get("notes.txt"));
        assertTrue(after.get(MANIFEST).contains(ABC), "the file of an earlier run stays listed");
        // the listed digests are those of the files: a third run finds nothing changed
        write(target, false, "a", "three");
        assertEquals("three", Files.readString(target.resolve("a")));
    }

    @Test
    void anEmptyFolderIsTaken() throws IOException {
        Path target = Files.createDirectory(dir.resolve("s"));
        write(target, false, "a", "one");
        assertEquals(Set.of("a", MANIFEST), Tree.of(target).keySet());
    }

    @Test
    void theSameFilesGiveTheSameManifest() throws IOException {
        write(dir.resolve("one"), false, "a", "x");
        write(dir.resolve("two"), false, "a", "y");
        write(dir.resolve("two"), false, "a", "x");
        assertEquals(Tree.of(dir.resolve("one")), Tree.of(dir.resolve("two")));
    }

    @Test
    void aFolderMadeWithinAnotherIsPartOfIt() throws IOException {
        Path target = dir.resolve("demo");
        for (int run = 0; run < 2; run++) {
            try (OutputFolder outer = OutputFolder.open(target, false)) {
                write(outer.path("programme"), false, "programme.json", "abc");
                outer.commit();
            }
        }
        assertEquals(
                Set.of(MANIFEST, "programme/", "programme/" + MANIFEST, "programme/programme.json"),
                Tree.of(target).keySet());
        write(target.resolve("programme"), false, "programme.json", "new");
        assertEquals("new", Files.readString(target.resolve("programme/programme.json")));
    }

    @Test
    void aLinkToAFolderStandsForTheFolder() throws IOException {
        Path real = Files.createDirectory(dir.resolve("real"));
        Path link = Files.createSymbolicLink(dir.resolve("link"), real);
        write(link, false, "a", "one");
        assertTrue(Files.isSymbolicLink(link));
        assertEquals("one", Files.readString(real.resolve("a")));
    }

    @Test
    void aFileReplacedByALinkIsTheUsers() throws IOException {
        Path target = dir.resolve("s");
        write(target, false, "a", "one");
        Path precious = Tree.write(dir.resolve("precious"), "one");
        Files.delete(target.resolve("a"));
        Files.createSymbolicLink(target.resolve("a"), precious);
        assertThrows(RuntimeException.class, () -> OutputFolder.open(target, false));
        write(target, true, "a", "two");
        assertEquals("one", Files.readString(precious));
        assertFalse(Files.isSymbolicLink(target.resolve("a")));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "../a", "/a", "a/../b", "", "a//b", "a/", "./a", "a/.", "..", "a\0", MANIFEST
            })
    void namesStayInside(String name) {
        try (OutputFolder out = OutputFolder.open(dir.resolve("s"), false)) {
            assertThrows(IllegalArgumentException.class, () -> out.path(name));
        }
    }

    /** Names of a user's own tracks: what the file system takes is taken. */
    @Test
    @EnabledOnOs({OS.LINUX, OS.MAC})
    void unusualNamesAreTaken() throws IOException {
        String name = "take 3:15 \"live\" \\ *?.wav";
        for (int run = 0; run < 2; run++) {
            write(dir.resolve("s"), false, name, "run " + run);
        }
        assertEquals("run 1", Files.readString(dir.resolve("s").resolve(name)));
    }

    @Test
    void afterCommitAndCloseNothingMoreIsTaken() {
        OutputFolder out = OutputFolder.open(dir.resolve("s"), false);
        out.commit();
        assertThrows(IllegalStateException.class, () -> out.path("a"));
        assertThrows(IllegalStateException.class, out::commit);
        out.close();
        assertTrue(Files.isDirectory(dir.resolve("s")));
    }

    /** What was published stays when the rest does not come about, whole and known as ours. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void whatWasPublishedStays(boolean isThere) throws IOException {
        Path target = dir.resolve("returns");
        if (isThere) {
            write(target, false, "a.wav", "old");
        }
        try (OutputFolder out = OutputFolder.open(target, false, "a.wav", "b.wav")) {
            out.write("a.wav", bytes("a"));
            out.write("log.json", bytes("1"));
            out.publish();
            out.write("b.wav", bytes("b"));
            assertFalse(Files.exists(target.resolve("b.wav")));
            out.write("log.json", bytes("2"));
            out.publish();
            out.write("a.wav", bytes("half"));
        }
        Map<String, String> tree = Tree.of(target);
        assertEquals("a", tree.get("a.wav"));
        assertEquals("b", tree.get("b.wav"));
        assertEquals("2", tree.get("log.json"));
        assertEquals(Set.of("a.wav", "b.wav", "log.json", MANIFEST), tree.keySet());
        assertEquals(Set.of(target.getFileName()), siblings(target));
        write(target, false, "a.wav", "again");
        assertEquals("again", Tree.of(target).get("a.wav"));
    }

    @Test
    void aFailedPublicationLeavesWhatWasPublishedBefore() throws IOException {
        Path target = dir.resolve("returns");
        try (OutputFolder out = OutputFolder.open(target, false)) {
            out.write("a.wav", bytes("a"));
            out.publish();
            Files.writeString(target.resolve("b.wav"), "mine");
            out.write("b.wav", bytes("b"));
            assertThrows(RefusedOutputException.class, out::publish);
        }
        assertEquals("a", Tree.of(target).get("a.wav"));
        assertEquals("mine", Tree.of(target).get("b.wav"));
    }
}
