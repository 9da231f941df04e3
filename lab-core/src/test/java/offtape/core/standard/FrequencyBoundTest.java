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

    /**
     * A straight line by least squares through N samples of white phase noise of variance s² has a
     * slope of variance 12·s² / (N·(N² − 1)); s² is the density times fs/2. That must be the bound.
     */
    @Test
    @Source({"Rife and Boorstyn 1974", "Kay 1993"})
    void densityAttainsTheBound() {
        ReferenceTable table = ReferenceTable.load("crlb");
        for (int row = 0; row < table.size(); row++) {
            double n = Math.round(48000 * table.number(row, "duration"));
            double variance = FrequencyBound.phaseDensity(table.number(row, "snr"), 48000) * 24000;
            double slope = Math.sqrt(12 * variance / (n * (n * n - 1)));
            assertRounded(table.number(row, "deviation"), slope * 48000 / (2 * Math.PI));
        }
    }

    private static void assertRounded(double published, double actual) {
        double unit = Math.pow(10, Math.floor(Math.log10(published)) - 2);
        assertEquals(published, actual, 0.5001 * unit);
    }
}
