package offtape.core.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is known to be ours, also amid the replacing of files. */
class ManifestTest {

    @TempDir Path dir;

    @Test
    void aRunThatDiedAmidTheMovesLeavesOnlyFilesKnownAsOurs() throws IOException {
        Path fresh = dir.resolve("new");
        Path there = dir.resolve("there");
        Tree.write(there.resolve("a"), "old a");
        Tree.write(there.resolve("b"), "old b");
        Tree.write(fresh.resolve("a"), "new a");
        Tree.write(fresh.resolve("b"), "new b");
        Manifest earlier = Manifest.of(there, List.of("a", "b"));
        Manifest written = Manifest.of(fresh, List.of("a", "b"));
        earlier.with(written).write(there.resolve(Manifest.FILE_NAME));
        Files.writeString(there.resolve("a"), "new a");

        Manifest found = Manifest.in(there).orElseThrow();
        assertEquals(Optional.empty(), found.changedIn(there));
        Files.writeString(there.resolve("b"), "mine");
        assertEquals(Optional.of("b"), found.changedIn(there));
        assertEquals(Optional.of("b"), earlier.replacedBy(written).changedIn(there));
    }

    @Test
    void aMissingFileIsNotChanged() throws IOException {
        Tree.write(dir.resolve("a"), "x");
        Manifest manifest = Manifest.of(dir, List.of("a"));
        assertTrue(manifest.holds(dir, "a"));
        Files.delete(dir.resolve("a"));
        assertFalse(manifest.holds(dir, "a"));
        assertEquals(Optional.empty(), manifest.changedIn(dir));
    }
}
