package offtape.core.output;

import java.io.IOException;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.BasicFileAttributes;
import offtape.core.fault.RefusedOutputException;
import offtape.core.text.Sentences;

/**
 * A hidden folder on the target's own file system in which outputs are made before they are moved
 * into place, and the lock that keeps a second run out of it. Only its owner can look into it.
 */
final class Workplace {

    private static final Sentences SAID = Sentences.near(Workplace.class);

    private static final String LOCK = "-lock";
    static final String STAGING = "-staging";
    static final String FRESH = "new";

    /** So often a place is entered that is taken away beneath. */
    private static final int ATTEMPTS = 5;

    private final Path base;
    private final Path folder;
    private final OutputLock lock;
    private final MadeFolders above;
    private boolean leftBehind;

    private Workplace(Path base, Path folder, OutputLock lock, MadeFolders above) {
        this.base = base;
        this.folder = folder;
        this.lock = lock;
        this.above = above;
    }

    /**
     * Enters the workplace {@code base/prefix-staging}, making {@code base} if need be and clearing
     * away what a dead run left.
     *
     * @param target the place the user named, for messages
     * @param instead what else could be chosen, for messages, such as {@code another name}
     * @throws RefusedOutputException if another run is in it or the place is not writable
     */
    static Workplace enter(Path target, Path base, String prefix, String instead) {
        for (int n = 1; ; n++) {
            try {
                return attempt(target, base, prefix, instead);
            } catch (NoSuchFileException e) {
                // a run that was refused took the folders away that it had made and we had found
                if (n == ATTEMPTS) {
                    throw unwritable(target, e);
                }
            } catch (IOException e) {
                throw unwritable(target, e);
            }
        }
    }

    private static Workplace attempt(Path target, Path base, String prefix, String instead)
            throws IOException {
        MadeFolders above = new MadeFolders();
        OutputLock lock = null;
        try {
            above.make(base);
            lock = take(target, base.resolve(prefix + LOCK), instead);
            Path folder = base.resolve(prefix + STAGING);
            Workplace workplace = new Workplace(base, folder, lock, above);
            workplace.renew();
            return workplace;
        } catch (IOException | RefusedOutputException e) {
            retreat(lock, above, e);
            throw e;
        }
    }

    /** Begins anew, with nothing made and nothing replaced. */
    void renew() throws IOException {
        delete(folder);
        OwnersOnly.make(folder);
        Files.createDirectory(fresh());
        Files.createDirectory(replaced());
    }

    /**
     * Clears away what a dead run left in a workplace that nobody enters any more.
     *
     * @throws RefusedOutputException if a run is still in it, or what it left cannot be read
     */
    static void clear(Path target, Path base, String prefix, String instead) {
        Path lock = base.resolve(prefix + LOCK);
        Path staging = base.resolve(prefix + STAGING);
        try {
            if (OutputLock.isHeld(lock)) {
                throw busy(target, instead);
            }
            boolean isLeft = Files.exists(lock) || Files.exists(staging, LinkOption.NOFOLLOW_LINKS);
            if (isLeft && Files.isWritable(base)) {
                OutputLock taken = take(target, lock, instead);
                try {
                    delete(staging);
                } finally {
                    taken.close();
                }
            }
        } catch (IOException e) {
            throw unwritable(target, e);
        }
    }

    private static OutputLock take(Path target, Path file, String instead) throws IOException {
        return OutputLock.tryTake(file).orElseThrow(() -> busy(target, instead));
    }

    private static RefusedOutputException busy(Path target, String instead) {
        return new RefusedOutputException(SAID.say("busy", target, instead));
    }

    private static void retreat(OutputLock lock, MadeFolders above, Exception why) {
        try {
            if (lock != null) {
                lock.close();
            }
            above.removeEmpty();
        } catch (IOException e) {
            why.addSuppressed(e);
        }
    }

    static RefusedOutputException unwritable(Path target, IOException trouble) {
        return new RefusedOutputException(
                SAID.say("unwritable", target, DiskTrouble.words(trouble)), trouble);
    }

    /** Where new files are made. */
    Path fresh() {
        return folder.resolve(FRESH);
    }

    /** Where replaced files wait until everything is in place. */
    Path replaced() {
        return folder.resolve("old");
    }

    /**
     * Moves the finished files to a visible folder, so that a refusal at the last moment does not
     * cost them.
     *
     * @return the sentence that says where they are
     */
    String rescue(String name) {
        Path kept = base.resolve(name + "-kept");
        for (int n = 2; Files.exists(kept, LinkOption.NOFOLLOW_LINKS); n++) {
            kept = base.resolve(name + "-kept-" + n);
        }
        try {
            Files.deleteIfExists(replaced());
            Files.move(fresh(), kept, StandardCopyOption.ATOMIC_MOVE);
        } catch (DirectoryNotEmptyException e) {
            return rescueAll(kept);
        } catch (IOException e) {
            return leftBehind();
        }
        above.keep();
        return SAID.say("kept", kept);
    }

    private String rescueAll(Path kept) {
        try {
            Files.move(folder, kept, StandardCopyOption.ATOMIC_MOVE);
            return SAID.say("kept-all", kept);
        } catch (IOException e) {
            return leftBehind();
        }
    }

    private String leftBehind() {
        leftBehind = true;
        return SAID.say("left-behind", folder);
    }

    /** Takes everything away again, also the folders made on the way if they are still empty. */
    void abandon() throws IOException {
        try (lock) {
            if (!leftBehind) {
                delete(folder);
            }
        }
        above.removeEmpty();
    }

    /** Takes the workplace away and leaves the target. */
    void finish() throws IOException {
        above.keep();
        abandon();
    }

    private static void delete(Path tree) throws IOException {
        if (!Files.exists(tree, LinkOption.NOFOLLOW_LINKS)) {
            return;
        }
        Files.walkFileTree(
                tree,
                new SimpleFileVisitor<>() {
                    @Override
                    public FileVisitResult visitFile(Path file, BasicFileAttributes attributes)
                            throws IOException {
                        Files.delete(file);
                        return FileVisitResult.CONTINUE;
                    }

                    @Override
                    public FileVisitResult postVisitDirectory(Path dir, IOException trouble)
                            throws IOException {
                        Files.delete(dir);
                        return FileVisitResult.CONTINUE;
                    }
                });
    }
}
