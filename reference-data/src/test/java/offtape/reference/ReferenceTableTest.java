package offtape.reference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class ReferenceTableTest {

    static List<String> names() throws IOException {
        try (Stream<Path> files =
                Files.list(Path.of("src/main/resources/offtape/reference/tables"))) {
            return files.map(file -> file.getFileName().toString())
                    .filter(file -> file.endsWith(".json"))
                    .map(file -> file.replace(".json", ""))
                    .sorted()
                    .toList();
        }
    }

    @Test
    void everyPublishedTableIsThere() throws IOException {
        assertTrue(names().size() >= 22, "tables: " + names());
    }

    @ParameterizedTest
    @MethodSource("names")
    void everyTableSaysHowFarItIsConfirmed(String name) {
        ReferenceTable table = ReferenceTable.load(name);
        assertTrue(table.size() > 1);
        assertTrue(
                table.seen().matches("(?s)(stored|memory|derived|see the column).*"), table.seen());
    }

    @ParameterizedTest
    @MethodSource("names")
    void figuresStandOnlyInColumnsWithAUnit(String name) {
        ReferenceTable table = ReferenceTable.load(name);
        for (ReferenceTable.Column column : table.columns()) {
            for (int row = 0; row < table.size(); row++) {
                assertFalse(
                        column.unit() == null && table.hasNumber(row, column.name()),
                        name + ": " + column.name());
            }
        }
    }

    @Test
    @Source("IEC 60386, weighting table: 4 Hz is the reference")
    void readsNumbersTextAndUnits() {
        ReferenceTable table = ReferenceTable.load("wf-weighting-iec60386");
        double[] frequencies = table.numbers("frequency");
        assertEquals(17, frequencies.length);
        assertEquals(4, frequencies[9], 0);
        assertEquals(0, table.number(9, "weighting"), 0);
        assertEquals("Hz", table.unit("frequency"));
        assertEquals("-30.6", table.text(1, "weighting"));
    }

    @Test
    @Source("IEC 60094-1 clause 15: 35 us and an infinite low time constant at 38.1 cm/s")
    void knowsEmptyCellsAndWords() {
        ReferenceTable table = ReferenceTable.load("replay-eq");
        assertFalse(table.hasNumber(2, "lowTimeConstant"));
        assertNull(table.text(2, "lowTimeConstant"));
        assertNull(table.unit("standard"));
        assertEquals("reel", table.text(2, "medium"));
        assertThrows(IllegalArgumentException.class, () -> table.numbers("lowTimeConstant"));
        assertThrows(IllegalArgumentException.class, () -> table.unit("colour"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"without-source", "without-seen", "ragged", "no-such-table"})
    void refusesWhatCannotBeTrusted(String name) {
        assertThrows(IllegalArgumentException.class, () -> ReferenceTable.load(name));
    }
}
