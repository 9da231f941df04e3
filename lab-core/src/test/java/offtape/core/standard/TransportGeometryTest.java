package offtape.core.standard;

import static offtape.core.standard.Checks.assertPublished;
import static org.junit.jupiter.api.Assertions.assertEquals;

import offtape.reference.ReferenceTable;
import offtape.reference.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TransportGeometryTest {

    /** Rates are rounded to 0.001 Hz. */
    @Test
    @Source("f = v / (π d), rotating parts of common transports")
    void partsTurnAtTheTabulatedRates() {
        ReferenceTable table = ReferenceTable.load("rotation-rates");
        for (int row = 0; row < table.size(); row++) {
            double rate =
                    TransportGeometry.rotationHz(
                            table.number(row, "speed"), table.number(row, "diameter"));
            assertPublished(table.number(row, "rate"), rate, 5e-4, 0, table.text(row, "part"));
        }
    }

    /** Delays are rounded to 0.1 ms. */
    @ParameterizedTest
    @CsvSource({"4.76, 47.625", "9.53, 95.25", "19.05, 190.5", "38.1, 381"})
    @Source("head spacing / tape speed")
    void headsLieTheTabulatedTimesApart(String column, double speedMmPerS) {
        ReferenceTable table = ReferenceTable.load("record-play-delay");
        for (int row = 0; row < table.size(); row++) {
            double spacing = table.number(row, "spacing");
            double delay = TransportGeometry.headDelayMs(spacing, speedMmPerS);
            assertPublished(table.number(row, "delay-" + column), delay, 0.05, 0, spacing + " mm");
            assertEquals(spacing, TransportGeometry.headSpacingMm(delay, speedMmPerS), 1e-12);
        }
    }
}
