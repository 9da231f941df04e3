package offtape.core.output;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/** All that lies under a folder, hidden things included: names and contents. */
final class Tree {

    private Tree() {}

    static Map<String, String> of(Path root) throws IOException {
        Map<String, String> all = new TreeMap<>();
        try (Stream<Path> tree = Files.walk(root)) {
            for (Path p : tree.filter(p -> !p.equals(root)).toList()) {
                String name = root.relativize(p).toString().replace('\\', '/');
                boolean folder = Files.isDirectory(p, LinkOption.NOFOLLOW_LINKS);
                all.put(folder ? name + "/" : name, folder ? "" : Files.readString(p));
            }
        }
        return all;
    }

    static Path write(Path file, String content) throws IOException {
        Files.createDirectories(file.getParent());
        return Files.writeString(file, content);
    }
}
