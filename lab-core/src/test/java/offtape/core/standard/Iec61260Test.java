package offtape.core.standard;

import static offtape.core.standard.Checks.assertPublished;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import offtape.reference.ReferenceTable;
import offtape.reference.Source;
import org.junit.jupiter.api.Test;

class Iec61260Test {

    /** The table gives the exact third-octave frequencies to four decimals. */
    @Test
    @Source("IEC 61672-1:2013, Table 3, exact frequencies 1000·10^(n/10)")
    void thirdOctavesAreTheExactFrequencies() {
        double[] published = ReferenceTable.load("a-weighting").numbers("frequency");
        double[] centres = Iec61260.bandCentresHz(10, 20000, 3);
        assertEquals(published.length, centres.length);
        for (int i = 0; i < centres.length; i++) {
            assertPublished(published[i], centres[i], 5e-5, 0, "band " + i);
        }
    }

    /** Twelfths from 1 kHz to 10 kHz: ten thirds of four steps each, both ends included. */
    @Test
    void rangeIncludesItsEnds() {
        double[] centres = Iec61260.bandCentresHz(1000, 10000, 12);
        assertEquals(41, centres.length);
        assertEquals(1000, centres[0], 1e-9);
        assertEquals(10000, centres[40], 1e-8);
        assertEquals(0, Iec61260.bandCentresHz(1010, 1040, 12).length);
    }

    /**
     * Edges of neighbours meet; the third octave about 1 kHz is 1000·10^(±1/20) = 891.25, 1122.02.
     */
    @Test
    void edgesMeet() {
        assertEquals(891.2509, Iec61260.lowerEdgeHz(1000, 3), 1e-4);
        assertEquals(1122.0185, Iec61260.upperEdgeHz(1000, 3), 1e-4);
        double[] centres = Iec61260.bandCentresHz(100, 1000, 6);
        for (int i = 1; i < centres.length; i++) {
            double edge = Iec61260.upperEdgeHz(centres[i - 1], 6);
            assertEquals(edge, Iec61260.lowerEdgeHz(centres[i], 6), 1e-9);
        }
    }

    @Test
    void refusesRangesWithoutBands() {
        assertThrows(IllegalArgumentException.class, () -> Iec61260.bandCentresHz(0, 10, 3));
        assertThrows(IllegalArgumentException.class, () -> Iec61260.bandCentresHz(20, 10, 3));
        assertThrows(IllegalArgumentException.class, () -> Iec61260.bandCentresHz(10, 20, 0));
    }
}
