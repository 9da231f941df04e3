package offtape.core.standard;

import static org.junit.jupiter.api.Assertions.assertEquals;

import offtape.reference.ReferenceTable;
import offtape.reference.Source;
import org.junit.jupiter.api.Test;

class FrequencyBoundTest {

    /** Three significant digits: half a unit of the third is at most 0.5 % of the figure. */
    @Test
    @Source({"Rife and Boorstyn 1974", "Kay 1993"})
    void boundAgreesWithTheTable() {
        ReferenceTable table = ReferenceTable.load("crlb");
        for (int row = 0; row < table.size(); row++) {
            long samples = Math.round(48000 * table.number(row, "duration"));
            double bound =
                    FrequencyBound.standardDeviationHz(table.number(row, "snr"), samples, 48000);
            assertRounded(table.number(row, "deviation"), bound);
            assertRounded(table.number(row, "relativeDeviation"), 100 * bound / 3150);
        }
    }

    private static void assertRounded(double published, double actual) {
        double unit = Math.pow(10, Math.floor(Math.log10(published)) - 2);
        assertEquals(published, actual, 0.5001 * unit);
    }
}
