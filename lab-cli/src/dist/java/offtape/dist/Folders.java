package offtape.dist;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** Folders with all that lies in them. */
final class Folders {

    private Folders() {}

    /** All files below a folder, by their names with slashes. */
    static List<Path> files(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(f -> !Files.isDirectory(f))
                    .sorted(Comparator.comparing(f -> name(folder, f)))
                    .toList();
        }
    }

    /** The name of a file below a folder, with slashes on every system. */
    static String name(Path folder, Path file) {
        return folder.relativize(file).toString().replace('\\', '/');
    }

    /** Removes a folder if it is there. */
    static void remove(Path folder) throws IOException {
        if (!Files.exists(folder)) {
            return;
        }
        List<Path> all;
        try (Stream<Path> files = Files.walk(folder)) {
            all = files.sorted(Comparator.reverseOrder()).toList();
        }
        for (Path path : all) {
            // what jlink writes may not be written to, which keeps Windows from removing it
            path.toFile().setWritable(true);
            Files.delete(path);
        }
    }
}
