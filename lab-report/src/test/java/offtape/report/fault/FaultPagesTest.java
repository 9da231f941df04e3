package offtape.report.fault;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * The pages of the documentation are what is known of the faults. With {@code
 * -Dofftape.writeFaultPages=true} they are written anew first.
 */
class FaultPagesTest {

    private static final Path FOLDER = Path.of("src", "doc", "faults");

    @BeforeAll
    static void writeIfAsked() throws IOException {
        if (Boolean.getBoolean("offtape.writeFaultPages")) {
            Files.createDirectories(FOLDER);
            for (Map.Entry<String, String> page : pages().entrySet()) {
                Files.writeString(FOLDER.resolve(page.getKey()), page.getValue());
            }
        }
    }

    private static Map<String, String> pages() {
        Map<String, String> pages = new TreeMap<>();
        pages.put("README.md", FaultMarkdown.index(FaultCatalogue.all()));
        for (FaultNote note : FaultCatalogue.all()) {
            pages.put(
                    note.code() + ".md",
                    FaultMarkdown.page(FaultPage.of(note, LearnedRows.of(note.code()))));
        }
        return pages;
    }

    @Test
    void everyFaultHasItsPageAndThereAreNoOthers() throws IOException {
        try (Stream<Path> files = Files.list(FOLDER)) {
            assertEquals(
                    pages().keySet(),
                    files.map(p -> p.getFileName().toString())
                            .collect(Collectors.toCollection(TreeSet::new)));
        }
    }

    @Test
    void thePagesSayWhatTheCatalogueSays() throws IOException {
        for (Map.Entry<String, String> page : pages().entrySet()) {
            assertEquals(
                    page.getValue(),
                    Files.readString(FOLDER.resolve(page.getKey())),
                    page.getKey()
                            + " is not what the catalogue says: run this test with"
                            + " -Dofftape.writeFaultPages=true");
        }
    }
}
