package offtape.core.filter;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import offtape.core.filter.EqualiserBand.Kind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the numbers of a band mean, by the definition in its own words. */
class EqualiserBandTest {

    /** With x = w − 1/w = ±1/Q the peak has gained half its decibels: f2 − f1 = f0/Q. */
    @ParameterizedTest
    @CsvSource({"6, 1", "-9, 0.3", "12, 6", "0.1, 2.5"})
    void aPeakHasHalfItsGainAtTheEndsOfItsWidth(double gainDb, double q) {
        EqualiserBand band = new EqualiserBand(Kind.PEAK, 2000, gainDb, q);
        double half = 1 / (2 * q);
        double upper = 2000 * (half + Math.sqrt(1 + half * half));
        double lower = 2000 * 2000 / upper;
        assertEquals(2000 / q, upper - lower, 1e-9 * upper);
        assertEquals(gainDb, band.gainDb(2000), 1e-9);
        assertEquals(gainDb / 2, band.gainDb(upper), 1e-9);
        assertEquals(gainDb / 2, band.gainDb(lower), 1e-9);
        assertEquals(0, band.gainDb(2e7), 0.01);
    }

    @Test
    void aCutMirrorsABoost() {
        for (Kind kind : Kind.values()) {
            for (double hz : new double[] {50, 700, 1000, 9000}) {
                double up = new EqualiserBand(kind, 700, 7, 0.71).gainDb(hz);
                double down = new EqualiserBand(kind, 700, -7, 0.71).gainDb(hz);
                assertEquals(0, up + down, 1e-9, kind + " at " + hz);
            }
        }
    }

    @Test
    void aShelfHasHalfItsGainAtItsFrequencyAndAllOfItBeyond() {
        EqualiserBand low = new EqualiserBand(Kind.LOW_SHELF, 120, 5, EqualiserBand.SHELF_Q);
        EqualiserBand high = new EqualiserBand(Kind.HIGH_SHELF, 6000, -8, EqualiserBand.SHELF_Q);
        assertEquals(2.5, low.gainDb(120), 1e-9);
        assertEquals(5, low.gainDb(0), 1e-9);
        assertEquals(0, low.gainDb(20_000), 0.01);
        assertEquals(-4, high.gainDb(6000), 1e-9);
        assertEquals(0, high.gainDb(0), 1e-9);
        assertEquals(-8, high.gainDb(1e6), 0.01);
    }

    @Test
    void aShelfDoesNotSwingOver() {
        EqualiserBand low = new EqualiserBand(Kind.LOW_SHELF, 100, 12, EqualiserBand.SHELF_Q);
        for (double hz = 5; hz < 3000; hz *= 1.05) {
            assertTrue(low.gainDb(hz * 1.05) <= low.gainDb(hz) + 1e-3);
        }
    }

    /**
     * A gain of 40·lg 4 = 24.08 dB is A = 4. Low shelf, Q = 1, an octave down, s = j/2: |4·(3.75 +
     * j)|² / |0 + j|² = 241; an octave up |4·4j|² / |−15 + 4j|² = 256/241. With Q = 2 an octave
     * down 16·(3.75² + 0.5²) / 0.5² = 916. A high shelf is the same the other way round. Peak, A =
     * 2, Q = 2, an octave off: (3² + 2²) / (3² + 0.5²) = 13/9.25.
     */
    @ParameterizedTest
    @CsvSource({
        "LOW_SHELF, 4, 1, 500, 241",
        "LOW_SHELF, 4, 1, 2000, 1.0622407",
        "LOW_SHELF, 4, 2, 500, 916",
        "HIGH_SHELF, 4, 1, 2000, 241",
        "HIGH_SHELF, 4, 1, 500, 1.0622407",
        "HIGH_SHELF, 4, 2, 2000, 916",
        "PEAK, 2, 2, 2000, 1.4054054",
        "PEAK, 2, 2, 500, 1.4054054"
    })
    void theGainBesideItsFrequencyIsThatOfTheCircuit(
            Kind kind, double a, double q, double hz, double power) {
        EqualiserBand band = new EqualiserBand(kind, 1000, 40 * Math.log10(a), q);
        assertEquals(10 * Math.log10(power), band.gainDb(hz), 1e-6);
    }

    @ParameterizedTest
    @CsvSource({
        "LOW_SHELF, low-shelf, low shelf",
        "PEAK, peak, peak",
        "HIGH_SHELF, high-shelf, high shelf"
    })
    void kindsHaveTheirNames(Kind kind, String key, String words) {
        assertEquals(key, kind.key());
        assertEquals(words, kind.words());
    }
}
