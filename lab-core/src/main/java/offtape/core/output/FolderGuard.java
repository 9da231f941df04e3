package offtape.core.output;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Collection;
import java.util.Optional;
import java.util.stream.Stream;
import offtape.core.fault.RefusedOutputException;
import offtape.core.text.Sentences;

/** Decides whether a folder may be written into. */
final class FolderGuard {

    private static final Sentences SAID = Sentences.near(FolderGuard.class);

    private static final String REMEDY = " Choose another --out or add --force.";

    private FolderGuard() {}

    /** Refuses a folder that is neither absent, nor empty, nor as we left it. */
    static void checkBefore(Path folder, boolean force, Collection<String> expected) {
        if (!Files.exists(folder)) {
            return;
        }
        if (!Files.isDirectory(folder)) {
            throw new RefusedOutputException(SAID.say("folder.is-file", folder));
        }
        if (!Files.isWritable(folder)) {
            throw new RefusedOutputException(SAID.say("folder.protected", folder));
        }
        if (!force) {
            checkOurs(folder);
        }
        checkNames(folder, force, expected);
    }

    private static void checkOurs(Path folder) {
        Optional<Manifest> ours = Manifest.in(folder);
        if (ours.isEmpty()) {
            firstIn(folder)
                    .ifPresent(
                            name -> {
                                throw new RefusedOutputException(
                                        SAID.say("folder.not-ours", folder, name));
                            });
            return;
        }
        ours.get()
                .changedIn(folder)
                .ifPresent(
                        name -> {
                            throw changed(folder, name);
                        });
    }

    private static RefusedOutputException changed(Path folder, String name) {
        return new RefusedOutputException(SAID.say("folder.changed", folder.resolve(name)));
    }

    private static Optional<String> firstIn(Path folder) {
        try (Stream<Path> inside = Files.list(folder)) {
            return inside.map(p -> p.getFileName().toString())
                    .filter(n -> n.equals(Manifest.FILE_NAME) || !OutputNames.isWorkplace(n))
                    .sorted()
                    .findFirst();
        } catch (IOException e) {
            throw Workplace.unwritable(folder, e);
        }
    }

    /** Refuses names whose place is taken by something that may not be replaced. */
    static void checkNames(Path folder, boolean force, Collection<String> names) {
        Manifest ours = Manifest.in(folder).orElse(Manifest.empty());
        for (String name : names) {
            checkWay(folder, name);
            Path place = folder.resolve(name);
            if (force || !Files.exists(place, LinkOption.NOFOLLOW_LINKS)) {
                continue;
            }
            if (!ours.lists(name)) {
                throw new RefusedOutputException(SAID.say("folder.in-the-way", place));
            }
            if (!ours.holds(folder, name)) {
                throw changed(folder, name);
            }
        }
    }

    // even with force: a folder or a device is never replaced by a file, and no link inside the
    // folder leads the output somewhere else
    private static void checkWay(Path folder, String name) {
        Path place = folder.resolve(name);
        if (Files.isDirectory(place, LinkOption.NOFOLLOW_LINKS)) {
            throw new RefusedOutputException(SAID.say("folder.folder-for-file", place));
        }
        if (Files.exists(place) && !Files.isRegularFile(place) && !Files.isSymbolicLink(place)) {
            throw new RefusedOutputException(SAID.say("folder.device-for-file", place));
        }
        for (Path p = place.getParent(); !p.equals(folder); p = p.getParent()) {
            if (Files.exists(p, LinkOption.NOFOLLOW_LINKS)
                    && !Files.isDirectory(p, LinkOption.NOFOLLOW_LINKS)) {
                throw new RefusedOutputException(SAID.say("folder.file-for-folder", p));
            }
        }
    }
}
