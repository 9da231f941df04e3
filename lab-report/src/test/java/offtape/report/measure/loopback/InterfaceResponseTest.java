package offtape.report.measure.loopback;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.stream.IntStream;
import offtape.report.result.InterfaceFigures;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A low-pass of first order at 8 kHz: −10·log(1 + (f/8000)²) dB, −atan(f/8000). */
class InterfaceResponseTest {

    private static final double EDGE_HZ = 8000;

    private static InterfaceResponse lowPass() {
        double[] hz =
                IntStream.rangeClosed(-120, 200)
                        .mapToDouble(n -> 1000 * Math.pow(2, n / 24.0))
                        .toArray();
        double[] db = new double[hz.length];
        double[] degrees = new double[hz.length];
        double[] uncertainty = new double[hz.length];
        for (int i = 0; i < hz.length; i++) {
            db[i] = -10 * Math.log10(1 + Math.pow(hz[i] / EDGE_HZ, 2));
            degrees[i] = -Math.toDegrees(Math.atan(hz[i] / EDGE_HZ));
            uncertainty[i] = 0.02;
        }
        return new InterfaceResponse(new InterfaceFigures.Curve(hz, db, degrees, uncertainty));
    }

    @Test
    void betweenPointsItIsThatOfTheFilter() {
        InterfaceResponse own = lowPass();
        for (double hz : new double[] {50, 333, 1000, 7777, 16_123}) {
            double x = hz / EDGE_HZ;
            assertEquals(1 / (1 + x * x), own.at(hz).re(), 2e-4);
            assertEquals(-x / (1 + x * x), own.at(hz).im(), 2e-4);
            assertEquals(0.02, own.uncertaintyDb(hz), 1e-12);
        }
    }

    /** −20 dB is where 1 + x² = 100: 79.6 kHz. */
    @Test
    void nothingIsToldWhereItHardlyLetsThrough() {
        InterfaceResponse own = lowPass();
        assertTrue(own.passes(79_000));
        assertFalse(own.passes(80_000));
        assertTrue(own.passes(31.25));
        assertFalse(own.passes(31.2));
        assertFalse(own.passes(400_000));
    }

    /** Three points, two decades: 316.2 Hz lies halfway between the first two, and so on. */
    private static InterfaceResponse threePoints(double lastDb) {
        return new InterfaceResponse(
                new InterfaceFigures.Curve(
                        new double[] {100, 1000, 10_000},
                        new double[] {1, -2, lastDb},
                        new double[] {30, -10, -60},
                        new double[] {0.1, 0.2, 0.4}));
    }

    @ParameterizedTest
    @CsvSource({
        "100, 1, 30, 0.1",
        "316.22776602, -0.5, 10, 0.15",
        "1000, -2, -10, 0.2",
        "3162.2776602, -6, -35, 0.3",
        "10000, -10, -60, 0.4",
        "20, 1, 30, 0.1",
        "30000, -10, -60, 0.4"
    })
    void itRunsStraightOverTheLogarithm(double hz, double db, double degrees, double doubtDb) {
        InterfaceResponse own = threePoints(-10);
        assertEquals(db, own.levelDb(hz), 1e-6);
        assertEquals(doubtDb, own.uncertaintyDb(hz), 1e-6);
        assertEquals(Math.pow(10, db / 20), own.at(hz).size(), 1e-6);
        assertEquals(degrees, Math.toDegrees(own.at(hz).phase()), 1e-5);
    }

    /** Between 1 and 10 kHz the level falls to −38 dB: −20 dB at 3162 Hz. */
    @ParameterizedTest
    @CsvSource({
        "100, true",
        "99.9, false",
        "1000, true",
        "3150, true",
        "3170, false",
        "10000, false"
    })
    void whatItLetsThroughPasses(double hz, boolean passes) {
        assertEquals(passes, threePoints(-38).passes(hz));
    }

    @Test
    void itsEndsPass() {
        assertTrue(threePoints(-10).passes(10_000));
        assertFalse(threePoints(-10).passes(10_001));
    }
}
