package offtape.core.output;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;

/**
 * Folders that nobody but their owner can look into, where the system knows such rights (POSIX).
 * Elsewhere they get what the folder above gives, which for a user's own places is the same.
 */
public final class OwnersOnly {

    private OwnersOnly() {}

    /**
     * Makes a folder.
     *
     * @throws IOException if that cannot be done, or something lies there already
     */
    public static void make(Path folder) throws IOException {
        Files.createDirectory(folder, rights(folder));
    }

    /**
     * Makes a folder and whatever is missing above it; what is there keeps its rights.
     *
     * @throws IOException if that cannot be done
     */
    public static void makeAll(Path folder) throws IOException {
        Files.createDirectories(folder, rights(folder));
    }

    /**
     * Makes a folder of a name that nobody can foretell in the place for temporary files.
     *
     * @throws IOException if that cannot be done
     */
    public static Path temporary() throws IOException {
        // so by the library's own contract: rwx for the owner alone
        return Files.createTempDirectory("offtape-");
    }

    private static FileAttribute<?>[] rights(Path place) {
        return place.getFileSystem().supportedFileAttributeViews().contains("posix")
                ? new FileAttribute<?>[] {
                    PosixFilePermissions.asFileAttribute(
                            PosixFilePermissions.fromString("rwx------"))
                }
                : new FileAttribute<?>[0];
    }
}
