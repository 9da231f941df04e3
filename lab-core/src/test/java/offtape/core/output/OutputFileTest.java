package offtape.core.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import offtape.core.fault.RefusedOutputException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** One file that appears whole or not at all. */
class OutputFileTest {

    @TempDir Path temp;
    private Path dir;
    private Path target;

    @BeforeEach
    void real() throws IOException {
        dir = temp.toRealPath();
        target = dir.resolve("my take é.wav");
    }

    private static void write(Path target, boolean force, String content) throws IOException {
        try (OutputFile out = OutputFile.open(target, force, "truth.json")) {
            Files.writeString(out.path(), content);
            Files.writeString(out.companion("truth.json"), content + " truth");
            assertFalse(Files.exists(target) && !force);
            out.commit();
        }
    }

    private static String refusal(Path target, boolean force, String... companions) {
        return assertThrows(
                        RefusedOutputException.class,
                        () -> OutputFile.open(target, force, companions))
                .getMessage();
    }

    @Test
    void itAppearsWithItsCompanion() throws IOException {
        write(target, false, "one");
        assertEquals(Map.of("my take é.wav", "one", "truth.json", "one truth"), Tree.of(dir));
    }

    @Test
    void missingFoldersAreMadeAndTakenAwayAgain() throws IOException {
        Path deep = dir.resolve("a/b/c.wav");
        try (OutputFile out = OutputFile.open(deep, false)) {
            Files.writeString(out.path(), "one");
        }
        assertEquals(Map.of(), Tree.of(dir));
        write(deep, false, "two");
        assertEquals("two", Files.readString(deep));
    }

    @Test
    void anExistingFileIsReplacedOnlyWithForce() throws IOException {
        write(target, false, "one");
        assertEquals(
                target + " exists already. Choose another name or add --force.",
                refusal(target, false));
        assertEquals("one", Files.readString(target));
        write(target, true, "two");
        assertEquals(Map.of("my take é.wav", "two", "truth.json", "two truth"), Tree.of(dir));
    }

    @Test
    void anExistingCompanionCountsToo() throws IOException {
        Path other = Tree.write(dir.resolve("truth.json"), "mine");
        assertEquals(
                other + " exists already. Choose another name or add --force.",
                refusal(target, false, "truth.json"));
        assertEquals(Map.of("truth.json", "mine"), Tree.of(dir));
    }

    @Test
    void aFolderIsNeverReplaced() {
        assertEquals(
                dir + " is a folder, and a file is to go there. Choose another name.",
                refusal(dir, true));
    }

    @Test
    @EnabledOnOs(
            value = {OS.LINUX, OS.MAC},
            disabledReason = "others have no devices among files")
    void aDeviceIsNeverReplaced() throws IOException {
        Path device = Path.of("/dev/null");
        Path link = Files.createSymbolicLink(target, device);
        for (Path named : new Path[] {device, link}) {
            assertEquals(
                    device
                            + " is a device or pipe, and a file is to go there. Choose another name.",
                    refusal(named, true));
        }
    }

    @Test
    void aFileAboveIsNamed() throws IOException {
        Tree.write(target, "mine");
        Path below = target.resolve("take.wav");
        assertEquals(
                below
                        + " cannot be made because "
                        + target
                        + " is a file and not a folder. Choose another --out.",
                refusal(below, false));
    }

    @Test
    void aLinkStaysALink() throws IOException {
        Path real = Tree.write(dir.resolve("elsewhere/real.wav"), "mine");
        Files.createSymbolicLink(target, real);
        assertEquals(
                real + " exists already. Choose another name or add --force.",
                refusal(target, false));
        try (OutputFile out = OutputFile.open(target, true)) {
            Files.writeString(out.path(), "new");
            out.commit();
        }
        assertTrue(Files.isSymbolicLink(target));
        assertEquals("new", Files.readString(real));
    }

    @Test
    void aRecordingIsNotLostWhenSomethingGotInTheWay() throws IOException {
        try (OutputFile out = OutputFile.open(target, false)) {
            Files.writeString(out.path(), "take");
            Files.writeString(target, "mine");
            assertEquals(
                    target
                            + " exists already. Choose another name or add --force. What was made"
                            + " is kept in "
                            + target
                            + "-kept.",
                    assertThrows(RefusedOutputException.class, out::commit).getMessage());
        }
        assertEquals(
                Map.of(
                        "my take é.wav", "mine",
                        "my take é.wav-kept/", "",
                        "my take é.wav-kept/my take é.wav", "take"),
                Tree.of(dir));
    }

    @Test
    void onlyWhatWasAnnouncedAndWrittenCounts() {
        try (OutputFile out = OutputFile.open(target, false)) {
            assertThrows(IllegalArgumentException.class, () -> out.companion("x"));
            assertThrows(IllegalStateException.class, out::commit);
        }
    }
}
