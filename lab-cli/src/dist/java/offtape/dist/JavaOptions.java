package offtape.dist;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The options with which Java starts, as the launcher of a checkout reads them. */
final class JavaOptions {

    private JavaOptions() {}

    /** The options in a folder, with the one that only a module has. */
    static List<String> read(Path folder) throws IOException {
        List<String> options = new ArrayList<>();
        for (String line : Files.readAllLines(folder.resolve("java.options"))) {
            if (line.startsWith("-")) {
                options.add(line);
            }
        }
        // what a manifest says for a jar: from Java 24 on native libraries are warned of without it
        options.add("--enable-native-access=" + OneModule.NAME);
        return List.copyOf(options);
    }
}
