package offtape.core.output;

import java.io.IOException;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;

/** Folders made on the way to a target, remembered so that they can be taken away again. */
final class MadeFolders {

    private final Deque<Path> made = new ArrayDeque<>();

    /**
     * Makes a folder and whatever is missing above it; links to folders count as folders. What
     * another run makes at the same time is there, but not ours.
     */
    void make(Path folder) throws IOException {
        Deque<Path> missing = new ArrayDeque<>();
        for (Path p = folder; p != null && !Files.isDirectory(p); p = p.getParent()) {
            missing.push(p);
        }
        for (Path p : missing) {
            try {
                Files.createDirectory(p);
                made.push(p);
            } catch (FileAlreadyExistsException e) {
                if (!Files.isDirectory(p)) {
                    throw e;
                }
            }
        }
    }

    /** Takes away, innermost first, those that are still empty. */
    void removeEmpty() throws IOException {
        while (!made.isEmpty()) {
            try {
                Files.deleteIfExists(made.pop());
            } catch (DirectoryNotEmptyException e) {
                // somebody else put something there meanwhile: it and all above it stay
                made.clear();
            }
        }
    }

    /** From now on they stay. */
    void keep() {
        made.clear();
    }
}
