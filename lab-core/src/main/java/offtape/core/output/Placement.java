package offtape.core.output;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayDeque;
import java.util.Deque;

/**
 * Moves finished files into place, one atomic move each, and can put everything back as it was if
 * one of them fails.
 */
final class Placement {

    private record Step(Path from, Path to, Path replaced) {}

    private final Path spare;
    private final MadeFolders made = new MadeFolders();
    private final Deque<Step> steps = new ArrayDeque<>();

    /**
     * @param spare an existing folder on the same file system where replaced files wait
     */
    Placement(Path spare) {
        this.spare = spare;
    }

    /** Moves one file into place; what was there is set aside. */
    void place(Path from, Path to) throws IOException {
        made.make(to.getParent());
        Path replaced = null;
        if (Files.exists(to, LinkOption.NOFOLLOW_LINKS)) {
            replaced = spare.resolve(Integer.toString(steps.size()));
            setAside(to, replaced);
        }
        try {
            Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException e) {
            putBack(replaced, to);
            throw e;
        }
        steps.push(new Step(from, to, replaced));
    }

    // a second name keeps the first in place until the atomic move replaces it; where there can be
    // none (some file systems, and symbolic links on some systems) the file is moved away
    private static void setAside(Path file, Path spare) throws IOException {
        if (Files.isSymbolicLink(file) || !hasSecondName(file, spare)) {
            Files.move(file, spare, StandardCopyOption.ATOMIC_MOVE);
        }
    }

    private static boolean hasSecondName(Path file, Path spare) {
        try {
            Files.createLink(spare, file);
            return true;
        } catch (IOException | UnsupportedOperationException e) {
            return false;
        }
    }

    private static void putBack(Path replaced, Path to) throws IOException {
        if (replaced != null) {
            Files.move(replaced, to, StandardCopyOption.ATOMIC_MOVE);
            // moving a file onto its own second name does nothing
            Files.deleteIfExists(replaced);
        }
    }

    /**
     * Puts everything back, last first. What cannot be put back stays where replaced files wait.
     *
     * @param why the failure that made it necessary; further trouble is added to it
     */
    void undo(IOException why) {
        try {
            while (!steps.isEmpty()) {
                Step step = steps.pop();
                Files.move(step.to(), step.from(), StandardCopyOption.ATOMIC_MOVE);
                putBack(step.replaced(), step.to());
            }
            made.removeEmpty();
        } catch (IOException e) {
            why.addSuppressed(e);
        }
    }

    /** Makes sure that a file's bytes are on the disk before its name appears. */
    static void settle(Path file) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            channel.force(true);
        }
    }
}
