package offtape.core.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import offtape.core.fault.RefusedOutputException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two runs into one place. */
class OutputLockTest {

    @TempDir Path temp;
    private Path dir;

    @BeforeEach
    void real() throws IOException {
        dir = temp.toRealPath();
    }

    private static String busy(Path target) {
        return busy(target, "--out");
    }

    private static String busy(Path target, String other) {
        return "Another run is just writing "
                + target
                + ". Wait until it has finished or choose another "
                + other
                + ".";
    }

    private static void assertBusy(Path target) {
        assertEquals(
                busy(target),
                assertThrows(RefusedOutputException.class, () -> OutputFolder.open(target, true))
                        .getMessage());
    }

    @Test
    void theSecondRunIntoAFolderIsRefused() throws IOException {
        Path target = dir.resolve("s");
        try (OutputFolder first = OutputFolder.open(target, false)) {
            first.write("a", "one".getBytes(StandardCharsets.UTF_8));
            assertEquals(
                    busy(target),
                    assertThrows(
                                    RefusedOutputException.class,
                                    () -> OutputFolder.open(target, true))
                            .getMessage());
            first.commit();
        }
        assertEquals(Set.of("s/", "s/a", "s/.offtape-manifest.json"), Tree.of(dir).keySet());
        try (OutputFolder again = OutputFolder.open(target, false)) {
            again.write("a", "two".getBytes(StandardCharsets.UTF_8));
            assertThrows(RefusedOutputException.class, () -> OutputFolder.open(target, false));
            again.commit();
        }
        assertEquals("two", Files.readString(target.resolve("a")));
    }

    /** The first began where nothing was, and its folder has appeared meanwhile. */
    @Test
    void theSecondRunIsRefusedAlsoOnceTheFirstHasPublished() throws IOException {
        Path target = dir.resolve("s");
        try (OutputFolder first = OutputFolder.open(target, false)) {
            first.write("a", "one".getBytes(StandardCharsets.UTF_8));
            first.publish();
            assertBusy(target);
            first.write("b", "two".getBytes(StandardCharsets.UTF_8));
            first.commit();
        }
        assertEquals(Set.of("s/", "s/a", "s/b", "s/.offtape-manifest.json"), Tree.of(dir).keySet());
    }

    /** Somebody makes the folder by hand while a run is at work that began without it. */
    @Test
    void theSecondRunIsRefusedAlsoInAFolderMadeMeanwhile() throws IOException {
        Path target = dir.resolve("s");
        try (OutputFolder first = OutputFolder.open(target, false)) {
            Files.createDirectory(target);
            assertBusy(target);
            first.write("a", "one".getBytes(StandardCharsets.UTF_8));
            first.commit();
        }
        assertEquals(Set.of("s/", "s/a", "s/.offtape-manifest.json"), Tree.of(dir).keySet());
    }

    @Test
    void theSecondRunIntoAFileIsRefused() throws IOException {
        Path target = dir.resolve("a.wav");
        try (OutputFile first = OutputFile.open(target, false)) {
            assertEquals(
                    busy(target, "name"),
                    assertThrows(RefusedOutputException.class, () -> OutputFile.open(target, false))
                            .getMessage());
            Files.writeString(first.path(), "one");
            first.commit();
        }
        assertEquals(Set.of("a.wav"), Tree.of(dir).keySet());
    }

    @Test
    void whatADeadRunLeftIsClearedAway() throws IOException {
        Tree.write(dir.resolve(".s.offtape-lock"), "");
        Tree.write(dir.resolve(".s.offtape-staging/new/deep/half"), "half");
        try (OutputFolder out = OutputFolder.open(dir.resolve("s"), false)) {
            out.write("a", "one".getBytes(StandardCharsets.UTF_8));
            out.commit();
        }
        assertEquals(Set.of("s/", "s/a", "s/.offtape-manifest.json"), Tree.of(dir).keySet());
    }

    /** It died after it had published, so that the next run works inside the folder. */
    @Test
    void whatADeadRunLeftBesideAFolderIsClearedAway() throws IOException {
        Path target = dir.resolve("s");
        try (OutputFolder out = OutputFolder.open(target, false)) {
            out.write("a", "one".getBytes(StandardCharsets.UTF_8));
            out.commit();
        }
        Tree.write(dir.resolve(".s.offtape-lock"), "");
        Tree.write(dir.resolve(".s.offtape-staging/new/half"), "half");
        try (OutputFolder out = OutputFolder.open(target, false)) {
            out.write("a", "two".getBytes(StandardCharsets.UTF_8));
            out.commit();
        }
        assertEquals(Set.of("s/", "s/a", "s/.offtape-manifest.json"), Tree.of(dir).keySet());
    }

    /** What a dead run left is nobody's: a folder that holds nothing else counts as empty. */
    @Test
    void whatADeadRunLeftInAFolderDoesNotMakeItSomebodysOwn() throws IOException {
        Path target = dir.resolve("s");
        Tree.write(target.resolve(".take.wav.offtape-lock"), "");
        Tree.write(target.resolve(".take.wav.offtape-staging/new/half"), "half");
        try (OutputFolder out = OutputFolder.open(target, false)) {
            out.write("a", "one".getBytes(StandardCharsets.UTF_8));
            out.commit();
        }
        Tree.write(dir.resolve("t/.notes.offtape"), "mine");
        assertThrows(
                RefusedOutputException.class, () -> OutputFolder.open(dir.resolve("t"), false));
    }

    @Test
    void aRunKilledInAnotherProcessStandsInTheWayOnlyWhileItLives() throws Exception {
        Path target = dir.resolve("s");
        Process other =
                new ProcessBuilder(
                                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                                "-cp",
                                System.getProperty("java.class.path"),
                                Holder.class.getName(),
                                target.toString())
                        .redirectError(ProcessBuilder.Redirect.INHERIT)
                        .start();
        try {
            assertEquals('o', other.getInputStream().read());
            assertEquals(
                    busy(target),
                    assertThrows(
                                    RefusedOutputException.class,
                                    () -> OutputFolder.open(target, false))
                            .getMessage());
        } finally {
            other.destroyForcibly().waitFor();
        }
        assertFalse(Files.exists(target));
        try (OutputFolder out = OutputFolder.open(target, false)) {
            out.write("a", "one".getBytes(StandardCharsets.UTF_8));
            out.commit();
        }
        assertEquals(Set.of("s/", "s/a", "s/.offtape-manifest.json"), Tree.of(dir).keySet());
    }

    /** Opens a folder, says so and waits to be killed. */
    static final class Holder {

        private Holder() {}

        public static void main(String[] args) throws IOException {
            try (OutputFolder out = OutputFolder.open(Path.of(args[0]), false)) {
                out.write("a", "half".getBytes(StandardCharsets.UTF_8));
                System.out.print('o');
                System.out.flush();
                while (System.in.read() >= 0) {
                    // until killed or left alone
                }
            }
        }
    }
}
