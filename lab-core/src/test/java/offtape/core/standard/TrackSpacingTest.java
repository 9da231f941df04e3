package offtape.core.standard;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import offtape.reference.ReferenceTable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TrackSpacingTest {

    /**
     * Independent of the table's spacings: tracks of a width w with a guard band g lie w + g apart.
     * Cassette 0.6 + 0.3 mm, butterfly 2.75 + 0.75 mm (widths and bands from memory).
     */
    @Test
    void spacingIsWidthAndGuardBand() {
        assertEquals(0.6 + 0.3, TrackSpacing.named("cassette").mm(), 1e-9);
        assertEquals(2.75 + 0.75, TrackSpacing.named("butterfly").mm(), 1e-9);
    }

    /**
     * Both tracks lie within the 6.3 mm of a quarter-inch tape, or a cassette's half of 3.81 mm.
     */
    @Test
    void tracksLieOnTheTape() {
        ReferenceTable table = ReferenceTable.load("track-formats");
        for (int row = 0; row < table.size(); row++) {
            double across = table.number(row, "spacing") + table.number(row, "track-width");
            double tape = table.text(row, "format").equals("cassette") ? 3.81 / 2 : 6.3;
            assertTrue(across <= tape, table.text(row, "format"));
        }
    }

    /**
     * A width is that of a format; a distance alone tells none. Cassette and butterfly as above.
     */
    @Test
    void aFormatHasItsWidth() {
        assertEquals(0.6, TrackSpacing.named("cassette").widthMm().orElseThrow(), 1e-9);
        assertEquals(2.75, TrackSpacing.named("Butterfly").widthMm().orElseThrow(), 1e-9);
        assertTrue(TrackSpacing.parse("0.9mm").widthMm().isEmpty());
        assertEquals(0.1, TrackSpacing.parse("0.1mm").mm());
        assertEquals(12.7, TrackSpacing.parse("12.7mm").mm());
    }

    @Test
    void distancesAreRead() {
        assertEquals(4.0, TrackSpacing.parse("4.0mm").mm());
        assertEquals(0.9, TrackSpacing.parse(" 0,9 MM").mm());
        assertEquals(0.04, TrackSpacing.parse("4").toleranceMm(), 1e-12);
        assertEquals(
                List.of("two-track", "butterfly", "quarter-track", "cassette"),
                TrackSpacing.names());
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "wide", "4cm", "0mm", "50mm", "-1mm"})
    void nonsenseIsRefusedInWords(String text) {
        String words =
                assertThrows(IllegalArgumentException.class, () -> TrackSpacing.parse(text))
                        .getMessage();
        assertTrue(words.endsWith("."), words);
    }

    @Test
    void unknownFormatsNameTheKnown() {
        String words =
                assertThrows(IllegalArgumentException.class, () -> TrackSpacing.named("eight"))
                        .getMessage();
        assertTrue(words.contains("quarter-track"), words);
    }
}
