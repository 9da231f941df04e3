package offtape.report.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;

import offtape.core.text.Language;
import offtape.report.result.Session;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PairingTest {

    private static Session named(String name) {
        return new Session(name, null, null, "two-pass", "", null, "", "");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Deck A  | Deck A    | SERVICE  | Deck A: before and after",
                "Deck A  | 'deck  a' | SERVICE  | 'Deck A, then deck a: before and after'",
                "Deck A  |           | SERVICE  | Deck A: before and after",
                "        | Deck A    | SERVICE  | Deck A: before and after",
                "        |           | SERVICE  | Unnamed machine: before and after",
                "'   '   | Deck A    | SERVICE  | Deck A: before and after",
                "Deck A  | Deck B    | MACHINES | Deck A and Deck B",
            })
    void namesTellWhetherTheseAreTwo(String first, String second, Pairing pairing, String title) {
        assertEquals(pairing, Pairing.of(named(first), named(second)));
        assertEquals(
                title,
                PairWords.of(pairing, named(first), named(second), Language.ENGLISH).title());
    }

    /** Forced upon names that are alike, the columns can still be told apart. */
    @ParameterizedTest
    @CsvSource({
        "Deck A, Deck A (first), Deck A (second)",
        ", Unnamed machine (first), Unnamed machine (second)"
    })
    void machinesOfOneNameAreNumbered(String name, String first, String second) {
        PairWords words =
                PairWords.of(Pairing.MACHINES, named(name), named(name), Language.ENGLISH);
        assertEquals(first, words.first());
        assertEquals(second, words.second());
        assertEquals("on " + second, words.onSecond());
    }
}
