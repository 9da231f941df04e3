package offtape.core.output;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import offtape.core.fault.RefusedOutputException;
import offtape.core.text.Sentences;

/**
 * One file, with companions beside it if need be, that appears whole or not at all.
 *
 * <p>A single file carries no mark of who wrote it, and a recording is hard to repeat, so the rule
 * is the simplest one: a file that exists is never replaced without force, not even one of ours.
 * The file is made in a hidden staging folder beside its place and moved there atomically,
 * companions first; if one move fails everything is put back. A link to a file stays a link, and
 * the file it points at is written.
 */
public final class OutputFile implements Closeable {

    private static final Sentences SAID = Sentences.near(OutputFile.class);

    private final Path file;
    private final List<String> names;
    private final boolean force;
    private final Workplace workplace;
    private boolean open = true;

    private OutputFile(Path file, List<String> names, boolean force, Workplace workplace) {
        this.file = file;
        this.names = names;
        this.force = force;
        this.workplace = workplace;
    }

    /**
     * Checks the place and gets ready to write; makes missing folders above it.
     *
     * @param file the file
     * @param force whether existing files may be replaced
     * @param companions names of files that are written beside it
     * @throws RefusedOutputException if one of them exists, the place is not writable, or another
     *     run is writing the file
     */
    public static OutputFile open(Path file, boolean force, String... companions) {
        Path place = Target.of(file);
        if (place.getFileName() == null) {
            throw folderInTheWay(place);
        }
        List<String> names =
                Stream.concat(Stream.of(companions), Stream.of(place.getFileName().toString()))
                        .toList();
        check(place, names, force);
        String prefix = "." + place.getFileName() + ".offtape";
        return new OutputFile(
                place,
                names,
                force,
                Workplace.enter(place, place.getParent(), prefix, SAID.say("another-name")));
    }

    private static void check(Path file, List<String> names, boolean force) {
        for (String name : names) {
            Path place = file.resolveSibling(name);
            if (Files.isDirectory(place)) {
                throw folderInTheWay(place);
            }
            // a move would put a file in the place of a device such as /dev/null, for everybody
            if (Files.exists(place) && !Files.isRegularFile(place)) {
                throw new RefusedOutputException(SAID.say("file.is-device", place));
            }
            if (!force && Files.exists(place, LinkOption.NOFOLLOW_LINKS)) {
                throw new RefusedOutputException(SAID.say("file.exists", place));
            }
        }
    }

    private static RefusedOutputException folderInTheWay(Path place) {
        return new RefusedOutputException(SAID.say("file.is-folder", place));
    }

    /** The place where the file will appear, absolute and without links. */
    public Path file() {
        return file;
    }

    /** Where to write the file for now. */
    public Path path() {
        return workplace.fresh().resolve(file.getFileName());
    }

    /**
     * Writes the whole file at once.
     *
     * @throws RefusedOutputException if the disk refuses
     */
    public void write(byte[] content) {
        try {
            Files.write(path(), content);
        } catch (IOException e) {
            throw Workplace.unwritable(file, e);
        }
    }

    /**
     * Where to write a companion for now.
     *
     * @throws IllegalArgumentException if the name was not given at opening
     */
    public Path companion(String name) {
        if (!names.contains(name)) {
            throw new IllegalArgumentException("not announced at opening: " + name);
        }
        return workplace.fresh().resolve(name);
    }

    /**
     * Lets the file and its companions appear; companions that were not written are left out.
     *
     * @throws IllegalStateException if the file itself was not written, or after commit or close
     * @throws RefusedOutputException if something got in the way meanwhile or the disk refuses; the
     *     message then says where the file is kept
     */
    public void commit() {
        if (!open || !Files.exists(path())) {
            throw new IllegalStateException("nothing to commit for " + file);
        }
        try {
            check(file, names, force);
            place();
        } catch (IOException e) {
            RefusedOutputException refusal = Workplace.unwritable(file, e);
            throw new RefusedOutputException(refusal.getMessage() + " " + rescue(), e);
        } catch (RefusedOutputException e) {
            throw new RefusedOutputException(e.getMessage() + " " + rescue(), e);
        }
        open = false;
        leave(true);
    }

    private String rescue() {
        return workplace.rescue(file.getFileName().toString());
    }

    private void place() throws IOException {
        List<String> written =
                names.stream().filter(n -> Files.exists(workplace.fresh().resolve(n))).toList();
        Placement placement = new Placement(workplace.replaced());
        try {
            for (String name : written) {
                Placement.settle(workplace.fresh().resolve(name));
            }
            for (String name : written) {
                placement.place(workplace.fresh().resolve(name), file.resolveSibling(name));
            }
        } catch (IOException e) {
            placement.undo(e);
            throw e;
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
            throw Workplace.unwritable(file, e);
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
