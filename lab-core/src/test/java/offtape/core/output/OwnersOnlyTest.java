package offtape.core.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Rights as POSIX writes them; read, write and search for the owner is rwx, 0700. */
class OwnersOnlyTest {

    @TempDir Path dir;

    @BeforeEach
    void onlyWhereTheSystemHasRights() {
        assumeTrue(dir.getFileSystem().supportedFileAttributeViews().contains("posix"));
    }

    private static String rights(Path path) throws IOException {
        return PosixFilePermissions.toString(Files.getPosixFilePermissions(path));
    }

    @Test
    void foldersAreTheOwnersOnly() throws IOException {
        OwnersOnly.make(dir.resolve("one"));
        assertEquals("rwx------", rights(dir.resolve("one")));
        assertThrows(FileAlreadyExistsException.class, () -> OwnersOnly.make(dir.resolve("one")));

        Path there = Files.createDirectory(dir.resolve("there"));
        Files.setPosixFilePermissions(there, PosixFilePermissions.fromString("rwxr-xr-x"));
        OwnersOnly.makeAll(there.resolve("a/b"));
        assertEquals("rwxr-xr-x", rights(there));
        assertEquals("rwx------", rights(there.resolve("a")));
        assertEquals("rwx------", rights(there.resolve("a/b")));

        Path temporary = OwnersOnly.temporary();
        assertEquals("rwx------", rights(temporary));
        Files.delete(temporary);
    }

    /** While an output is made nobody looks at it; once in place it is as any other file. */
    @Test
    void whatIsBeingMadeIsTheOwnersOnly() throws IOException {
        Path usual = Files.createFile(dir.resolve("usual"));
        try (OutputFile out = OutputFile.open(dir.resolve("a.wav"), false)) {
            out.write(new byte[1]);
            assertEquals("rwx------", rights(out.path().getParent().getParent()));
            out.commit();
        }
        assertEquals(rights(usual), rights(dir.resolve("a.wav")));
    }
}
