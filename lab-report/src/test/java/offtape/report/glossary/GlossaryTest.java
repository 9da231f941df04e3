package offtape.report.glossary;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * With {@code -Dofftape.writeGlossary=true} the page of the documentation is written anew first.
 */
class GlossaryTest {

    private static final Path PAGE = Path.of("src", "doc", "glossary.md");

    @BeforeAll
    static void writeIfAsked() throws IOException {
        if (Boolean.getBoolean("offtape.writeGlossary")) {
            Files.writeString(PAGE, page());
        }
    }

    private static String page() {
        String rows =
                Glossary.in(Locale.ENGLISH).stream()
                        .map(e -> "| " + e.term() + " | " + e.meaning() + " |\n")
                        .collect(Collectors.joining());
        return "# Words of the trade\n\n| word | in plain words |\n| --- | --- |\n" + rows;
    }

    private static Set<String> keys(Locale language) {
        return Glossary.in(language).stream().map(Glossary.Entry::key).collect(Collectors.toSet());
    }

    @Test
    void bothLanguagesTellTheSameWords() {
        assertEquals(keys(Locale.ENGLISH), keys(Locale.GERMAN));
        List<String> meanings =
                Glossary.in(Locale.ENGLISH).stream().map(Glossary.Entry::meaning).toList();
        assertTrue(
                Glossary.in(Locale.GERMAN).stream()
                        .map(Glossary.Entry::meaning)
                        .noneMatch(meanings::contains));
    }

    /** Words that the first screen of a report uses. */
    @ParameterizedTest
    @ValueSource(strings = {"k3", "weighted", "a-weighting", "crosstalk", "balance", "azimuth"})
    void wordsOfTheFirstScreenAreTold(String key) {
        assertTrue(keys(Locale.ENGLISH).contains(key));
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "de"})
    void meaningsAreWholeSentencesInOrder(String language) {
        List<Glossary.Entry> entries = Glossary.in(Locale.forLanguageTag(language));
        for (Glossary.Entry entry : entries) {
            assertTrue(entry.meaning().endsWith("."), entry.term());
        }
        assertEquals("a-weighting", entries.get(0).key());
    }

    @Test
    void thePageSaysTheSame() throws IOException {
        assertEquals(
                page(), Files.readString(PAGE), "run this test with -Dofftape.writeGlossary=true");
    }
}
