package offtape.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Every library on the class path is listed, and its licence goes with Offtape's own, MIT. */
final class LicencesTest {

    /** Permissive: they ask for their text to be kept, and nothing of the work built with them. */
    private static final Set<String> SHIPPED =
            Set.of("Apache-2.0", "BSD-2-Clause", "BSD-3-Clause", "MIT");

    /** What the tests use isn't passed on; weak copyleft is no obstacle there. */
    private static final Set<String> TESTS =
            Set.of("Apache-2.0", "BSD-2-Clause", "BSD-3-Clause", "EPL-2.0", "MIT");

    private static final Pattern JAR = Pattern.compile("(.+?)-\\d[^-]*(-[A-Za-z0-9.]+)?\\.jar");

    private static final Set<String> OWN =
            Set.of("reference-data", "lab-core", "lab-report", "lab-cli");

    @Test
    void theListHoldsTheLibrariesOnTheClassPathAndNoOthers() throws IOException {
        Set<String> listed = new TreeSet<>();
        rows().forEach(row -> listed.add(row.get(0)));
        assertEquals(listed, classPath());
    }

    @Test
    void eachLicenceIsCompatible() throws IOException {
        for (List<String> row : rows()) {
            Map<String, Set<String>> allowed =
                    new TreeMap<>(Map.of("shipped", SHIPPED, "tests", TESTS));
            assertTrue(allowed.containsKey(row.get(2)), () -> "unknown use: " + row);
            assertTrue(allowed.get(row.get(2)).contains(row.get(1)), () -> "licence: " + row);
        }
    }

    private static Set<String> classPath() {
        Set<String> names = new TreeSet<>();
        for (String entry : System.getProperty("java.class.path").split(File.pathSeparator)) {
            Matcher jar = JAR.matcher(new File(entry).getName());
            if (jar.matches() && !OWN.contains(jar.group(1))) {
                names.add(jar.group(1));
            }
        }
        return names;
    }

    private static List<List<String>> rows() throws IOException {
        try (InputStream in = Main.class.getResourceAsStream("licences.csv")) {
            Stream<String> lines = new String(in.readAllBytes(), StandardCharsets.UTF_8).lines();
            return lines.filter(line -> !line.startsWith("#"))
                    .skip(1)
                    .map(line -> List.of(line.split(",", -1)))
                    .toList();
        }
    }
}
