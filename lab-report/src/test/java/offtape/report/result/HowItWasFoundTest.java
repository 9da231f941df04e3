package offtape.report.result;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.lang.reflect.RecordComponent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import offtape.core.unit.Quantity;
import org.junit.jupiter.api.Test;

/** Each figure of the results has its formula and source in the page that tells them. */
class HowItWasFoundTest {

    private static final Path PAGE = Path.of("src/doc/how-it-was-found.md");

    private static Stream<RecordComponent> components() throws IOException {
        try (Stream<Path> sources = Files.list(Path.of("src/main/java/offtape/report/result"))) {
            List<String> names =
                    sources.map(f -> f.getFileName().toString().replace(".java", ""))
                            .filter(name -> !name.equals("package-info"))
                            .sorted()
                            .toList();
            return names.stream()
                    .map(HowItWasFoundTest::named)
                    .filter(Class::isRecord)
                    .flatMap(record -> Arrays.stream(record.getRecordComponents()));
        }
    }

    private static Class<?> named(String simpleName) {
        try {
            return Class.forName("offtape.report.result." + simpleName);
        } catch (ClassNotFoundException e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void everyFigureIsThere() throws IOException {
        String page = Files.readString(PAGE);
        Set<String> figures =
                components()
                        .filter(component -> component.getType() == Quantity.class)
                        .map(RecordComponent::getName)
                        // what a scrape reading holds is told under its name in the results
                        .filter(name -> !name.equals("figure"))
                        .collect(Collectors.toCollection(TreeSet::new));
        assertTrue(figures.size() > 50, figures.toString());
        figures.removeIf(name -> page.contains("`" + name + "`"));
        assertEquals(Set.of(), figures, "figures without formula and source");
    }

    @Test
    void everyRowOfFiguresNamesASource() throws IOException {
        List<String> rows =
                Files.readAllLines(PAGE).stream()
                        .filter(line -> line.startsWith("| ") && !line.startsWith("| ---"))
                        .toList();
        for (String row : rows) {
            String[] cells = row.split("(?<!\\\\)\\|");
            assertTrue(cells[cells.length - 1].strip().length() > 3, row);
        }
    }
}
