package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.List;
import offtape.cli.terminal.Terminal;
import offtape.reference.FaultFiles;
import offtape.report.fault.FaultCatalogue;
import offtape.report.fault.FaultNote;
import offtape.report.fault.FaultPage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is known of faults, at the terminal and for scripts. */
class FaultsCommandTest {

    static List<String> codes() {
        return FaultFiles.codes();
    }

    @Test
    void eachFaultIsALineWithItsCodeFirst() {
        Tool.Outcome list = Tool.run("faults");
        assertEquals(0, list.code());
        assertEquals("", list.err());
        assertEquals(codes(), list.out().lines().map(l -> l.split(" ")[0]).toList());
        // the longest code, wrong-equalisation, has 18 letters, and two spaces follow
        assertTrue(list.out().contains("\nbelt                Slipping or aged belt or idler\n"));
    }

    @Test
    void aPageTellsWhatToTryFirst() {
        Tool.Outcome page = Tool.run("faults", "hiss");
        assertEquals(0, page.code());
        assertEquals("", page.err());
        assertTrue(
                page.out().startsWith("Noise of the electronics above that of the tape\n"),
                page.out());
        assertTrue(page.out().contains("\n  - One channel weak (weak-channel): "), page.out());
        assertTrue(page.out().contains("\n\nWhat to try first\n  Switch to replay "), page.out());
    }

    @Test
    void everyPageFitsItsColumns() {
        for (int columns : List.of(40, 80)) {
            for (FaultNote note : FaultCatalogue.all()) {
                List<String> lines =
                        new FaultPageWords(Terminal.of(System.out, System.err, false))
                                .page(FaultPage.of(note), columns);
                assertEquals(List.of(), lines.stream().filter(l -> l.length() > columns).toList());
            }
        }
    }

    @Test
    void wordsAreSetInLinesOfTheGivenWidth() {
        assertEquals(
                List.of("  one two", "  threefourfive", "  six"),
                FaultPageWords.wrapped("one two threefourfive six", "  ", 9));
    }

    @Test
    void scriptsReadTheNote() throws IOException {
        ObjectMapper mapper = new ObjectMapper();
        JsonNode one = mapper.readTree(Tool.run("faults", "azimuth", "--json").out());
        assertEquals("azimuth", one.get("code").textValue());
        assertEquals("reference-tape", one.at("/modes/0").textValue());
        JsonNode all = mapper.readTree(Tool.run("faults", "--json").out());
        assertEquals(codes().size(), all.size());
    }

    @ParameterizedTest
    @CsvSource({
        "dirty-haed, '\"dirty-haed\"; did you mean dirty-head? '",
        "Azimuth, '\"Azimuth\"; did you mean azimuth? '",
        "zzzzzzzzzzz, '\"zzzzzzzzzzz\". '"
    })
    void anUnknownCodeIsRefusedWithTheNearestOne(String typed, String words) {
        assertEquals(
                new Tool.Outcome(
                        2,
                        "",
                        "offtape: There is no fault "
                                + words
                                + "\"offtape faults\" lists all. See \"offtape faults --help\".\n"),
                Tool.run("faults", typed));
    }
}
