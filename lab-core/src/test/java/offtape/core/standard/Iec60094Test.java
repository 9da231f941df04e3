package offtape.core.standard;

import static offtape.core.standard.Checks.assertPublished;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import offtape.core.standard.Iec60094.Equalisation;
import offtape.reference.ReferenceTable;
import offtape.reference.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class Iec60094Test {

    private static final double NONE = Double.POSITIVE_INFINITY;

    @ParameterizedTest
    @CsvSource({
        "flux-17.5, Infinity, 17.5", "flux-35, Infinity, 35", "flux-50-3180, 3180, 50",
        "flux-70, Infinity, 70", "flux-90-3180, 3180, 90", "flux-120-3180, 3180, 120",
        "flux-70-3180, 3180, 70"
    })
    @Source("IEC 60094-1 clause 15, flux formula")
    void fluxAgreesWithTheTable(String column, double low, double high) {
        ReferenceTable table = ReferenceTable.load("tape-flux-vs-frequency");
        for (int row = 0; row < table.size(); row++) {
            double f = table.number(row, "frequency");
            double flux = Iec60094.fluxDb(f, low, high);
            assertPublished(table.number(row, column), flux, 0.005, 0, column + " at " + f);
        }
    }

    /**
     * Far above its corner one time constant against another is a shelf of their ratio:
     * 20·lg(35/50) = −3.098 dB between the two at 38.1 cm/s, besides what 1 kHz takes.
     */
    @Test
    void wrongTimeConstantIsAShelf() {
        double shelf = Iec60094.fluxDb(1e6, NONE, 50) - Iec60094.fluxDb(1e6, NONE, 35);
        double w = 2 * Math.PI * 1e-3;
        double at1kHz = 10 * Math.log10((1 + 35 * 35 * w * w) / (1 + 50 * 50 * w * w));
        assertEquals(20 * Math.log10(35.0 / 50) - at1kHz, shelf, 1e-3);
    }

    @Test
    @Source("IEC 60094-1 as listed in IASA TC-04, section 5.4.10 Table 1")
    void findsTheCurrentPairsOfASpeed() {
        List<Equalisation> studio = current(381);
        assertEquals(2, studio.size());
        assertEquals(35, studio.get(0).highMicroseconds(), 0);
        assertEquals(NONE, studio.get(0).lowMicroseconds(), 0);
        assertEquals(50, studio.get(1).highMicroseconds(), 0);
        assertEquals(3180, studio.get(1).lowMicroseconds(), 0);
        assertEquals(-0.15, current(762).get(0).fluxDb(2000), 0.005);
    }

    /** 4.7625 cm/s is listed rounded to 4.76. */
    @Test
    void speedsMatchWithinTheirRounding() {
        assertTrue(Iec60094.equalisations(47.625).size() >= 3);
        assertTrue(Iec60094.equalisations(95.25).size() >= 3);
        assertEquals(List.of(), Iec60094.equalisations(100));
    }

    private static List<Equalisation> current(double speedMmPerS) {
        return Iec60094.equalisations(speedMmPerS).stream()
                .filter(e -> e.status().startsWith("current"))
                .toList();
    }
}
