package offtape.core.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A move that fails half-way leaves everything as it was. */
class PlacementTest {

    @TempDir Path dir;

    @Test
    void everythingIsPutBack() throws IOException {
        Path fresh = dir.resolve("new");
        Path there = dir.resolve("there");
        Tree.write(fresh.resolve("a"), "new a");
        Tree.write(fresh.resolve("sub/b"), "new b");
        Tree.write(there.resolve("a"), "old a");
        Tree.write(there.resolve("c"), "old c");
        Path spare = Files.createDirectory(dir.resolve("old"));
        Map<String, String> before = Tree.of(dir);

        Placement placement = new Placement(spare);
        placement.place(fresh.resolve("a"), there.resolve("a"));
        placement.place(fresh.resolve("sub/b"), there.resolve("sub/b"));
        assertEquals("new a", Files.readString(there.resolve("a")));
        assertEquals("new b", Files.readString(there.resolve("sub/b")));
        IOException failure =
                assertThrows(
                        IOException.class,
                        () -> placement.place(fresh.resolve("gone"), there.resolve("c")));
        placement.undo(failure);

        assertEquals(before, Tree.of(dir));
        assertEquals(0, failure.getSuppressed().length);
    }
}
