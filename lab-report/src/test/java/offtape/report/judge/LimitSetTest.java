package offtape.report.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import offtape.core.fault.UnusableInputException;
import offtape.reference.ReferenceTable;
import offtape.reference.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LimitSetTest {

    @TempDir private Path folder;

    private LimitSet read(String text) throws IOException {
        Path file = Files.writeString(folder.resolve("limits.json"), text);
        return LimitSet.of(file.toString());
    }

    @Test
    void allSetsThatShipAndTheFormCanBeRead() throws IOException {
        for (String name : LimitSet.names()) {
            LimitSet set = LimitSet.of(name);
            assertFalse(set.source().isBlank(), name);
        }
        LimitSet form = read(LimitSet.template());
        for (Judged judged : Judged.values()) {
            assertTrue(
                    form.limits().stream().anyMatch(l -> l.judged() == judged),
                    () -> "the form shows no limit of " + judged.key());
        }
    }

    /** Each figure of the set stands in a row of the published table. */
    @Test
    @Source("DIN 45500 part 4, points 1-9")
    void theNormsLimitsAreThoseOfItsTable() {
        List<String> rows =
                ReferenceTable.load("din45500-4").rows().stream()
                        .map(
                                r ->
                                        r.get(0).asText()
                                                + " "
                                                + r.get(1).asText()
                                                + " "
                                                + r.get(2).asText())
                        .toList();
        String[][] expected = {
            {"mean speed deviation", "1.5"},
            {"wow & flutter", "0.2"},
            {"40..250 Hz and 6.3..12.5 kHz", "7 dB wide"},
            {"250 Hz..6.3 kHz", "5 dB wide"},
            {"noise distance", "56"},
            {"noise distance", "46"},
            {"stereo pair 1 kHz", "20"},
            {"channel difference", "2"}
        };
        List<Limit> limits = LimitSet.of("din45500-4").limits();
        assertEquals(expected.length, limits.size());
        for (int i = 0; i < expected.length; i++) {
            String[] parts = expected[i];
            assertTrue(
                    rows.stream().anyMatch(r -> r.contains(parts[0]) && r.contains(parts[1])),
                    parts[0]);
            String number = parts[1].replaceAll("[^0-9.]", "");
            assertTrue(limits.get(i).words().contains(number), () -> limits + " has no " + number);
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{\"quantity\": \"hum\", \"most\": 1}|is no quantity of limits",
                "{\"quantity\": \"balance\"}|has least, most",
                "{\"quantity\": \"balance\", \"least\": 2, \"most\": 1}|least below most",
                "{\"quantity\": \"response\", \"most\": 1}|neither least nor most",
                "{\"quantity\": \"balance\", \"most\": 1, \"mosst\": 1}|Perhaps \"most\" is meant"
            })
    void aLimitThatSaysNothingIsRefused(String limit, String words) {
        String text =
                "{\"format\": \"offtape-limits\", \"version\": 1, \"name\": \"a\", \"source\":"
                        + " \"b\", \"limits\": ["
                        + limit
                        + "]}";
        UnusableInputException e = assertThrows(UnusableInputException.class, () -> read(text));
        assertTrue(e.getMessage().contains(words), e.getMessage());
    }

    @Test
    void whatIsNoSetIsRefused() {
        assertTrue(
                assertThrows(UnusableInputException.class, () -> LimitSet.of("none"))
                        .getMessage()
                        .contains("din45500-4, studio-practice"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            nullValues = "-",
            value = {
                "something|1|a|b|has the format \"offtape-limits\" and the version 1.",
                "-|1|a|b|has the format \"offtape-limits\" and the version 1.",
                "offtape-limits|2|a|b|has the format \"offtape-limits\" and the version 1.",
                "offtape-limits|1|-|b|has a name and a source.",
                "offtape-limits|1|' '|b|has a name and a source.",
                "offtape-limits|1|a|-|has a name and a source.",
                "offtape-limits|1|a|' '|has a name and a source."
            })
    void aSetSaysWhatItIs(String format, int version, String name, String source, String words) {
        List<Limit> limits = List.of(Limits.of("balance", null, 1.0));
        UnusableInputException e =
                assertThrows(
                        UnusableInputException.class,
                        () -> new LimitSet(format, version, name, source, limits));
        assertEquals("A set of limits " + words, e.getMessage());
    }

    @Test
    void aSetHoldsLimits() {
        for (List<Limit> none : Arrays.asList(null, List.<Limit>of())) {
            assertEquals(
                    "A set of limits holds at least one limit.",
                    assertThrows(
                                    UnusableInputException.class,
                                    () -> new LimitSet(LimitSet.FORMAT, 1, "a", "b", none))
                            .getMessage());
        }
    }
}
