package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import offtape.cli.terminal.Terminal;
import offtape.core.unit.Quantity;
import offtape.reference.ReferenceTable;
import offtape.reference.Source;
import offtape.report.result.Erasure;
import org.junit.jupiter.api.Test;

class ErasureWordsTest {

    private static List<String> words(double left, double right) {
        return new ErasureWords(Terminal.of(System.out, System.err, false))
                .lines(
                        List.of(
                                new Erasure(
                                        "left",
                                        1003.4,
                                        -12.0,
                                        Quantity.known(left, "dB", 0.4),
                                        null),
                                new Erasure(
                                        "right",
                                        1003.4,
                                        -12.0,
                                        Quantity.known(right, "dB", 0.4),
                                        null)));
    }

    /** The table's row: erasure, 1 kHz, ≥ 60 dB. */
    @Test
    @Source("DIN 45500 part 4, points 1-9")
    void lessThanTheNormAsksForIsSaidWithTheRemedy() {
        List<JsonNode> row =
                ReferenceTable.load("din45500-4").rows().stream()
                        .filter(r -> r.get(0).asText().equals("erasure"))
                        .findFirst()
                        .orElseThrow();
        double limit = Double.parseDouble(row.get(2).asText().replaceAll("[^0-9.]", ""));
        assertEquals(2, words(limit + 0.1, limit + 5).size());
        List<String> weak = words(limit - 0.1, limit + 5);
        assertEquals("left   1003 Hz: 59.9 ± 0.4 dB weaker where it was erased", weak.get(0));
        assertTrue(weak.get(2).contains("mains voltage"), weak.get(2));
    }

    @Test
    void limitsAndUnknownsAreSaid() {
        Quantity unknown = Quantity.unknown("It was not replayed.");
        List<String> lines =
                new ErasureWords(Terminal.of(System.out, System.err, false))
                        .lines(
                                List.of(
                                        new Erasure("left", 1000, -12.0, unknown, 71.23),
                                        new Erasure("right", 1000, -12.0, unknown, null)));
        assertEquals(2, lines.size());
        assertTrue(lines.get(0).contains("at least 71.2 dB"), lines.get(0));
        assertEquals("right  unknown: It was not replayed.", lines.get(1));
    }
}
