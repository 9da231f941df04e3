package offtape.core.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.StandardProtocolFamily;
import java.net.UnixDomainSocketAddress;
import java.nio.channels.ServerSocketChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import offtape.core.fault.RefusedOutputException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Where an output folder is refused, and that a refusal changes nothing. */
class FolderRefusalTest {

    private static final String REMEDY = " Choose another --out or add --force.";

    @TempDir Path temp;
    private Path dir;
    private Path target;

    @BeforeEach
    void real() throws IOException {
        dir = temp.toRealPath();
        target = dir.resolve("s");
    }

    private static void write(Path target, boolean force, String name, String content) {
        try (OutputFolder out = OutputFolder.open(target, force)) {
            out.write(name, content.getBytes(StandardCharsets.UTF_8));
            out.commit();
        }
    }

    private void assertRefused(String said, Path place, boolean force, String... expected)
            throws IOException {
        Map<String, String> before = Tree.of(dir);
        assertEquals(
                said,
                assertThrows(
                                RefusedOutputException.class,
                                () -> OutputFolder.open(place, force, expected))
                        .getMessage());
        assertEquals(before, Tree.of(dir));
    }

    @Test
    void filesOfSomebodyElse() throws IOException {
        Tree.write(target.resolve("b.wav"), "mine");
        Tree.write(target.resolve("a.wav"), "mine");
        assertRefused(
                target
                        + " already holds files that were not written by this command, such as"
                        + " a.wav."
                        + REMEDY,
                target,
                false);
        write(target, true, "b.wav", "new");
        assertEquals("new", Files.readString(target.resolve("b.wav")));
        assertEquals("mine", Files.readString(target.resolve("a.wav")));
    }

    @Test
    void aFileChangedSince() throws IOException {
        write(target, false, "results.json", "one");
        Files.writeString(target.resolve("results.json"), "mine");
        assertRefused(
                target.resolve("results.json")
                        + " was changed since it was written, and the change would be lost."
                        + REMEDY,
                target,
                false);
        write(target, true, "results.json", "two");
        write(target, false, "results.json", "three");
        assertEquals("three", Files.readString(target.resolve("results.json")));
    }

    @Test
    void aUsersFileUnderANameThatWillBeWritten() throws IOException {
        write(target, false, "a", "one");
        Tree.write(target.resolve("report.html"), "mine");
        assertRefused(
                target.resolve("report.html")
                        + " is in the way and was not written by this command."
                        + REMEDY,
                target,
                false,
                "a",
                "report.html");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "null",
                "[1]",
                "{\"format\":\"offtape-manifest\",\"version\":2,\"files\":[]}",
                "{\"format\":\"other\",\"version\":1,\"files\":[]}",
                "{\"format\":\"offtape-manifest\",\"version\":1}",
                "{\"format\":\"offtape-manifest\",\"version\":1,\"files\":[null]}",
                "{\"format\":\"offtape-manifest\",\"version\":1,\"files\":[{\"name\":\"../x\","
                        + "\"sha256\":\"0\"}]}",
                "{\"format\":\"offtape-manifest\",\"version\":1,\"files\":[{\"name\":\"x\"}]}"
            })
    void aManifestThatIsNotUnderstood(String content) throws IOException {
        Tree.write(target.resolve(".offtape-manifest.json"), content);
        assertRefused(
                target
                        + " already holds files that were not written by this command, such as"
                        + " .offtape-manifest.json."
                        + REMEDY,
                target,
                false);
    }

    @Test
    void aFileInPlaceOfTheFolder() throws IOException {
        Tree.write(target, "mine");
        assertRefused(
                target + " is a file, and a folder is needed. Choose another --out.", target, true);
    }

    @Test
    void aFileInPlaceOfAFolderAbove() throws IOException {
        Tree.write(target, "mine");
        Path below = target.resolve("x/y");
        assertRefused(
                below
                        + " cannot be made because "
                        + target
                        + " is a file and not a folder. Choose another --out.",
                below,
                true);
    }

    @Test
    void aLinkThatLeadsNowhere() throws IOException {
        Files.createSymbolicLink(target, dir.resolve("gone"));
        assertEquals(
                target + " is a link that leads nowhere. Remove it or choose another --out.",
                assertThrows(RefusedOutputException.class, () -> OutputFolder.open(target, true))
                        .getMessage());
        assertTrue(Files.isSymbolicLink(target));
    }

    @Test
    void aFolderWhereAFileIsToGoEvenWithForce() throws IOException {
        Tree.write(target.resolve("a/mine"), "mine");
        assertRefused(
                target.resolve("a")
                        + " is a folder where a file is to go. Move it or choose another --out.",
                target,
                true,
                "a");
    }

    @Test
    void whatIsNoFileEvenWithForce() throws IOException {
        Files.createDirectories(target);
        // stands for a device, which not everybody can make
        Path socket = target.resolve("a");
        try (ServerSocketChannel channel = ServerSocketChannel.open(StandardProtocolFamily.UNIX)) {
            channel.bind(UnixDomainSocketAddress.of(socket));
            String message =
                    assertThrows(
                                    RefusedOutputException.class,
                                    () -> OutputFolder.open(target, true, "a"))
                            .getMessage();
            assertEquals(
                    socket + " is a device or pipe where a file is to go. Choose another --out.",
                    message);
        }
        assertTrue(Files.exists(socket));
    }

    @Test
    void aLinkInsideThatLeadsOutEvenWithForce() throws IOException {
        Tree.write(dir.resolve("outside/a"), "mine");
        Files.createDirectory(target);
        Files.createSymbolicLink(target.resolve("csv"), dir.resolve("outside"));
        String said =
                assertThrows(
                                RefusedOutputException.class,
                                () -> OutputFolder.open(target, true, "csv/a"))
                        .getMessage();
        assertEquals(
                target.resolve("csv")
                        + " is not a folder, and one is needed there. Move it or choose another"
                        + " --out.",
                said);
    }

    @Test
    void whatGotInTheWayMeanwhileCostsNothing() throws IOException {
        write(target, false, "a", "one");
        Map<String, String> before;
        try (OutputFolder out = OutputFolder.open(target, false)) {
            out.write("a", "two".getBytes(StandardCharsets.UTF_8));
            Files.writeString(target.resolve("a"), "mine");
            String said = assertThrows(RefusedOutputException.class, out::commit).getMessage();
            assertEquals(
                    target.resolve("a")
                            + " was changed since it was written, and the change would be lost."
                            + REMEDY
                            + " What was made is kept in "
                            + target.resolve("s-kept")
                            + ".",
                    said);
        }
        before = Tree.of(target);
        before.remove(".offtape-manifest.json");
        assertEquals(Map.of("a", "mine", "s-kept/", "", "s-kept/a", "two"), before);
    }
}
