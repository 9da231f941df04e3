package offtape.core.output;

import java.io.Closeable;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Objects;
import java.util.Optional;

/**
 * A lock that the operating system drops when its process ends, however it ends: what a dead run
 * left behind never stands in the way. The lock file is deleted on leaving.
 */
final class OutputLock implements Closeable {

    private static final int ATTEMPTS = 5;

    private final Path file;
    private final FileChannel channel;

    private OutputLock(Path file, FileChannel channel) {
        this.file = file;
        this.channel = channel;
    }

    /** The lock, or nothing if another run holds it. */
    static Optional<OutputLock> tryTake(Path file) throws IOException {
        for (int attempt = 0; attempt < ATTEMPTS; attempt++) {
            FileChannel channel =
                    FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
            try {
                Object opened = identity(file);
                if (!locked(channel)) {
                    channel.close();
                    return Optional.empty();
                }
                // the previous holder deletes the file on leaving: what was opened may by now be
                // a file without a name, whose lock would keep nobody out
                if (Files.exists(file) && Objects.equals(opened, identity(file))) {
                    return Optional.of(new OutputLock(file, channel));
                }
                channel.close();
            } catch (IOException e) {
                channel.close();
                throw e;
            }
        }
        return Optional.empty();
    }

    /** Whether another run holds the lock; needs no right to write the file. */
    static boolean isHeld(Path file) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ);
                FileLock shared = channel.tryLock(0, Long.MAX_VALUE, true)) {
            return shared == null;
        } catch (OverlappingFileLockException e) {
            return true;
        } catch (NoSuchFileException e) {
            return false;
        }
    }

    private static boolean locked(FileChannel channel) throws IOException {
        try {
            FileLock lock = channel.tryLock();
            return lock != null;
        } catch (OverlappingFileLockException e) {
            return false;
        }
    }

    private static Object identity(Path file) throws IOException {
        try {
            return Files.readAttributes(file, BasicFileAttributes.class).fileKey();
        } catch (NoSuchFileException e) {
            return "gone";
        }
    }

    @Override
    public void close() throws IOException {
        // deleted while still held, so that nobody else's file is deleted
        try (channel) {
            Files.deleteIfExists(file);
        }
    }
}
