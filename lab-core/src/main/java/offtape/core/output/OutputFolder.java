package offtape.core.output;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import offtape.core.fault.RefusedOutputException;
import offtape.core.fault.UnusableInputException;

/**
 * Several files that appear in a folder together or not at all.
 *
 * <p>Opening checks at once, before any long work, that the folder is absent, empty, or one we
 * wrote ourselves and nobody changed since: a manifest in it lists what we wrote, with digests.
 * Files are made in a hidden staging folder on the same file system (inside the target if that
 * exists, else beside it) and {@link #commit()} moves them into place: the whole folder in one
 * atomic move if the target is absent, else file by file, the manifest last, putting everything
 * back if one fails. A run that dies leaves the target as it was or, at worst amid the moves, with
 * nothing but files known as ours; the next run clears its staging folder away.
 *
 * <p>Never touched, even with force: files whose names this run does not produce. They include
 * files of an earlier run, which stay listed in the manifest.
 */
public final class OutputFolder implements Closeable {

    private final Path folder;
    private final boolean force;
    private final Workplace workplace;
    private boolean open = true;

    private OutputFolder(Path folder, boolean force, Workplace workplace) {
        this.folder = folder;
        this.force = force;
        this.workplace = workplace;
    }

    /**
     * Checks the place and gets ready to write; makes missing folders above it.
     *
     * @param dir the folder; a link to a folder stands for the folder
     * @param force whether files may be replaced that we did not write or that were changed since
     * @param expectedNames names that will surely be written, as far as known, so that a user's
     *     file in the way is found now and not at the end
     * @throws RefusedOutputException if something of the user's is in the way, the place is not
     *     writable, or another run is writing into it
     */
    public static OutputFolder open(Path dir, boolean force, String... expectedNames) {
        List<String> names = Arrays.stream(expectedNames).map(OutputNames::checked).toList();
        Path folder = Target.of(dir);
        FolderGuard.checkBefore(folder, force, names);
        Workplace workplace = FolderEntrance.enter(folder);
        try {
            // once more, since another run may have left it only just now
            FolderGuard.checkBefore(folder, force, names);
        } catch (RefusedOutputException e) {
            throw FolderEntrance.left(workplace, e);
        }
        return new OutputFolder(folder, force, workplace);
    }

    /** The folder in which the files will appear, absolute and without links. */
    public Path directory() {
        return folder;
    }

    /**
     * Where to write one of the files for now; its folder exists.
     *
     * @param name its name in the folder, with {@code /} between parts
     * @throws IllegalArgumentException if the name leads outside the folder or starts with {@code
     *     .offtape-}
     * @throws IllegalStateException after commit or close
     */
    public Path path(String name) {
        requireOpen();
        Path staged = workplace.fresh().resolve(OutputNames.checked(name));
        try {
            Files.createDirectories(staged.getParent());
        } catch (IOException e) {
            throw Workplace.unwritable(folder.resolve(name), e);
        }
        return staged;
    }

    /**
     * Writes one whole file.
     *
     * @throws RefusedOutputException if the disk refuses it
     */
    public void write(String name, byte[] content) {
        try {
            Files.write(path(name), content);
        } catch (IOException e) {
            throw Workplace.unwritable(folder.resolve(name), e);
        }
    }

    /**
     * Lets the files appear.
     *
     * @throws RefusedOutputException if something of the user's got in the way meanwhile or the
     *     disk refuses; the target is then as it was and the message says where the files are kept
     */
    public void commit() {
        placeAll();
        open = false;
        leave(true);
    }

    /**
     * Lets the files appear that were made so far, together or not at all, and stays open for more:
     * for work that takes long and whose parts are worth keeping should the rest not come about.
     *
     * @throws RefusedOutputException as {@link #commit}
     */
    public void publish() {
        placeAll();
        try {
            workplace.renew();
        } catch (IOException e) {
            throw Workplace.unwritable(folder, e);
        }
    }

    private void placeAll() {
        requireOpen();
        try {
            place(stagedNames());
        } catch (IOException e) {
            RefusedOutputException refusal = Workplace.unwritable(folder, e);
            throw new RefusedOutputException(refusal.getMessage() + " " + rescue(), e);
        } catch (RefusedOutputException | UnusableInputException e) {
            throw new RefusedOutputException(e.getMessage() + " " + rescue(), e);
        }
    }

    private String rescue() {
        Path name = folder.getFileName();
        return workplace.rescue(name == null ? "output" : name.toString());
    }

    private void place(List<String> names) throws IOException {
        for (String name : names) {
            Placement.settle(workplace.fresh().resolve(name));
        }
        Manifest written = Manifest.of(workplace.fresh(), names);
        if (Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
            FolderGuard.checkNames(folder, force, names);
            placeEach(names, written);
        } else {
            written.write(workplace.fresh().resolve(Manifest.FILE_NAME));
            Files.move(workplace.fresh(), folder, StandardCopyOption.ATOMIC_MOVE);
        }
    }

    private void placeEach(List<String> names, Manifest written) throws IOException {
        Manifest earlier = Manifest.in(folder).orElse(Manifest.empty());
        Path list = workplace.fresh().resolve(Manifest.FILE_NAME);
        Placement placement = new Placement(workplace.replaced());
        try {
            earlier.with(written).write(list);
            placement.place(list, folder.resolve(Manifest.FILE_NAME));
            for (String name : names) {
                placement.place(workplace.fresh().resolve(name), folder.resolve(name));
            }
            earlier.replacedBy(written).write(list);
            placement.place(list, folder.resolve(Manifest.FILE_NAME));
        } catch (IOException e) {
            placement.undo(e);
            Files.deleteIfExists(list);
            throw e;
        }
    }

    private List<String> stagedNames() throws IOException {
        Path root = workplace.fresh();
        try (Stream<Path> tree = Files.walk(root)) {
            return tree.filter(Files::isRegularFile)
                    .map(p -> OutputNames.below(root, p))
                    .sorted()
                    .collect(Collectors.toList());
        }
    }

    private void requireOpen() {
        if (!open) {
            throw new IllegalStateException("the output folder is already closed");
        }
    }

    private void leave(boolean committed) {
        try {
            if (committed) {
                workplace.finish();
            } else {
                workplace.abandon();
            }
        } catch (IOException e) {
            throw Workplace.unwritable(folder, e);
        }
    }

    /** Without a commit before: takes away what was made and leaves everything as it was. */
    @Override
    public void close() {
        if (open) {
            open = false;
            leave(false);
        }
    }
}
