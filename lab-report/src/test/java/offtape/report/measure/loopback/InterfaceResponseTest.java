package offtape.report.measure.loopback;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.stream.IntStream;
import offtape.report.result.InterfaceFigures;
import org.junit.jupiter.api.Test;

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
}
