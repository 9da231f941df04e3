package offtape.dist;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** The jars that make up Offtape. */
final class Jars {

    private Jars() {}

    /** The jar of the commands and those in the folder of its libraries, which come by name. */
    static List<Path> of(Path jar, Path libraries) throws IOException {
        List<Path> jars = new ArrayList<>(List.of(jar));
        try (Stream<Path> files = Files.list(libraries)) {
            files.filter(f -> f.toString().endsWith(".jar")).sorted().forEach(jars::add);
        }
        return List.copyOf(jars);
    }
}
