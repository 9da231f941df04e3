package offtape.core.output;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What becomes of finished files that could not be put in their place. */
class WorkplaceTest {

    @TempDir Path dir;

    private Workplace enter() throws IOException {
        Workplace workplace = Workplace.enter(dir.resolve("s"), dir, ".s", "another place");
        Files.writeString(workplace.fresh().resolve("a"), "new");
        return workplace;
    }

    @Test
    void theyAreKeptUnderAFreeName() throws IOException {
        for (String kept : new String[] {"s-kept", "s-kept-2", "s-kept-3"}) {
            Workplace workplace = enter();
            assertEquals(
                    "What was made is kept in " + dir.resolve(kept) + ".", workplace.rescue("s"));
            workplace.abandon();
            assertEquals("new", Files.readString(dir.resolve(kept).resolve("a")));
        }
    }

    @Test
    void filesFromBeforeThatCouldNotBePutBackAreKeptToo() throws IOException {
        Workplace workplace = enter();
        Files.writeString(workplace.replaced().resolve("0"), "old");
        assertEquals(
                "What was made (new) and some files from before (old) are kept in "
                        + dir.resolve("s-kept")
                        + ".",
                workplace.rescue("s"));
        workplace.abandon();
        assertEquals(
                Map.of(
                        "s-kept/", "",
                        "s-kept/new/", "",
                        "s-kept/new/a", "new",
                        "s-kept/old/", "",
                        "s-kept/old/0", "old"),
                Tree.of(dir));
    }

    @Test
    void whatCannotBeMovedIsLeftWhereItLies() throws IOException {
        Workplace workplace = enter();
        // without its usual place the move fails, as it does on a disk gone read-only
        Files.move(workplace.fresh(), dir.resolve(".s-staging/moved"));
        assertEquals(
                "What was made lies in "
                        + dir.resolve(".s-staging")
                        + "; move it from there before the next run.",
                workplace.rescue("s"));
        workplace.abandon();
        assertEquals("new", Files.readString(dir.resolve(".s-staging/moved/a")));
    }
}
