package offtape.core.standard;

import static offtape.core.standard.Checks.assertPublished;
import static org.junit.jupiter.api.Assertions.assertEquals;

import offtape.reference.ReferenceTable;
import offtape.reference.Source;
import org.junit.jupiter.api.Test;

class Iec61672Test {

    private static final ReferenceTable TABLE = ReferenceTable.load("a-weighting");

    /** Rounded to 0.1 dB; 0.001 dB more for exact frequencies given to four decimals. */
    @Test
    @Source("IEC 61672-1:2013, Table 3")
    void weightingsAgreeWithTheTableAtTheExactFrequencies() {
        double worst = 0;
        for (int row = 0; row < TABLE.size(); row++) {
            double f = TABLE.number(row, "frequency");
            double a = TABLE.number(row, "a");
            double c = TABLE.number(row, "c");
            assertPublished(a, Iec61672.aWeightingDb(f), 0.05, 0.001, "A at " + f + " Hz");
            assertPublished(c, Iec61672.cWeightingDb(f), 0.05, 0.001, "C at " + f + " Hz");
            worst = Math.max(worst, Math.abs(a - Iec61672.aWeightingDb(f)));
            worst = Math.max(worst, Math.abs(c - Iec61672.cWeightingDb(f)));
        }
        System.out.printf("A and C weighting: worst %.4f dB%n", worst);
    }

    /**
     * Far below its poles A falls by 24 dB and C by 12 dB an octave (four and two zeros at 0 Hz),
     * far above both fall by 12 dB (two poles more than zeros).
     */
    @Test
    void slopesFollowFromZerosAndPoles() {
        double octave = 20 * Math.log10(2);
        double a = Iec61672.aWeightingDb(0.02) - Iec61672.aWeightingDb(0.01);
        double c = Iec61672.cWeightingDb(0.02) - Iec61672.cWeightingDb(0.01);
        double high = Iec61672.aWeightingDb(2e7) - Iec61672.aWeightingDb(1e7);
        assertEquals(4 * octave, a, 1e-4);
        assertEquals(2 * octave, c, 1e-4);
        assertEquals(-2 * octave, high, 1e-4);
    }
}
