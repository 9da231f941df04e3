package offtape.cli.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What every bundle of texts in the sources of this project has to hold to. */
class BundlesTest {

    private static final Pattern PLACE =
            Pattern.compile("%(?:([0-9]+)\\$)?[-#+0,(]*[0-9]*(?:\\.[0-9]+)?([sdfeg%])");

    /** Sentences of the library that reads command lines, which our sources do not say. */
    private static final String OF_LIBRARY = "library-";

    private static Path sources() {
        Path here = Path.of("").toAbsolutePath();
        return Files.isDirectory(here.resolve("lab-core")) ? here : here.getParent();
    }

    private static Stream<Path> resources() {
        return Stream.of("reference-data", "lab-core", "lab-report", "lab-cli")
                .map(module -> sources().resolve(module).resolve("src/main/resources"));
    }

    /** The bundles without a language in their names. */
    static List<Path> bundles() throws IOException {
        Set<Path> all = new TreeSet<>();
        for (Path folder : resources().toList()) {
            try (Stream<Path> files = Files.walk(folder)) {
                files.filter(f -> f.toString().endsWith(".properties"))
                        .filter(f -> !f.toString().endsWith("_de.properties"))
                        .forEach(all::add);
            }
        }
        return List.copyOf(all);
    }

    private static Properties read(Path file) throws IOException {
        Properties texts = new Properties();
        try (Reader in = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
            texts.load(in);
        }
        return texts;
    }

    private static Path german(Path bundle) {
        return bundle.resolveSibling(
                bundle.getFileName().toString().replace(".properties", "_de.properties"));
    }

    /** What a pattern is filled with: the number of each argument and how it is written. */
    private static Set<String> places(String pattern) {
        Set<String> places = new TreeSet<>();
        Matcher place = PLACE.matcher(pattern);
        int next = 1;
        while (place.find()) {
            if (!place.group(2).equals("%")) {
                places.add((place.group(1) == null ? next++ : place.group(1)) + place.group(2));
            }
        }
        return places;
    }

    @ParameterizedTest
    @MethodSource("bundles")
    void bothLanguagesSayTheSameWithTheSameContents(Path bundle) throws IOException {
        Properties english = read(bundle);
        Properties german = read(german(bundle));
        assertEquals(new TreeSet<>(english.keySet()), new TreeSet<>(german.keySet()));
        for (String key : english.stringPropertyNames()) {
            assertEquals(
                    places(english.getProperty(key)),
                    places(german.getProperty(key)),
                    bundle + key);
            assertFalse(german.getProperty(key).isBlank(), key);
        }
    }

    @ParameterizedTest
    @MethodSource("bundles")
    void noKeyIsGivenTwice(Path bundle) throws IOException {
        for (Path file : List.of(bundle, german(bundle))) {
            Set<String> seen = new HashSet<>();
            String continued = "";
            for (String line : Files.readAllLines(file, StandardCharsets.UTF_8)) {
                boolean isEntry = !continued.endsWith("\\") && line.matches("[^#\\s].*=.*");
                continued = line;
                assertTrue(
                        !isEntry || seen.add(line.replaceAll("\\s*=.*", "")), file + ": " + line);
            }
        }
    }

    @ParameterizedTest
    @MethodSource("bundles")
    void sentencesThatAreKeptInEnglishStandInTheIndex(Path bundle) throws IOException {
        String name = bundle.getFileName().toString();
        Path root = resources().filter(bundle::startsWith).findFirst().orElseThrow().normalize();
        String path = root.relativize(bundle).toString().replace('\\', '/');
        String module =
                sources().relativize(root).getName(0).toString().replaceAll("lab-|-data", "");
        Path index = root.resolve("META-INF/offtape/sentences-" + module);
        Set<String> listed =
                Files.exists(index)
                        ? new TreeSet<>(Files.readAllLines(index, StandardCharsets.UTF_8))
                        : Set.of();
        assertEquals(
                name.equals("Sentences.properties"),
                listed.contains(path.replace(".properties", "")),
                bundle.toString());
    }

    /**
     * A key that no source names says nothing; those put together at run time are known by parts.
     */
    @ParameterizedTest
    @MethodSource("bundles")
    void everyTextIsSaidSomewhere(Path bundle) throws IOException {
        Path module = bundle;
        while (!Files.exists(module.resolve("pom.xml"))) {
            module = module.getParent();
        }
        String code;
        try (Stream<Path> files = Files.walk(module.resolve("src/main/java"))) {
            code =
                    files.filter(f -> f.toString().endsWith(".java"))
                            .map(BundlesTest::text)
                            .collect(Collectors.joining("\n"));
        }
        String all = code;
        List<String> silent =
                read(bundle).stringPropertyNames().stream()
                        .filter(key -> !key.startsWith(OF_LIBRARY))
                        .filter(key -> !all.contains("\"" + key + "\""))
                        .filter(
                                key ->
                                        beginnings(key)
                                                .noneMatch(b -> all.contains("\"" + b + "\"")))
                        .toList();
        boolean isOfKnownParts = name(bundle).equals("glossary") || name(bundle).startsWith("Help");
        boolean isOfWords =
                Stream.of("core/text", "reference/faults", "reference/limits")
                        .anyMatch(bundle.toString()::contains);
        assertTrue(isOfKnownParts || isOfWords || silent.isEmpty(), bundle + " " + silent);
    }

    private static String name(Path bundle) {
        return bundle.getFileName().toString().replace(".properties", "");
    }

    private static Stream<String> beginnings(String key) {
        return IntStream.range(key.indexOf('.') + 1, key.length())
                .filter(i -> ".-".indexOf(key.charAt(i)) >= 0)
                .mapToObj(i -> key.substring(0, i + 1));
    }

    private static String text(Path file) {
        try {
            return Files.readString(file, StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
