package offtape.report.measure.speed;

import static org.junit.jupiter.api.Assertions.assertEquals;

import offtape.core.standard.FlutterBand;
import org.junit.jupiter.api.Test;

/** How far two meters may differ, on spectra of single lines, by hand. */
class MeterDoubtTest {

    private static final double BIN_HZ = 0.05;

    private static double[] lines(double... hz) {
        double[] peak = new double[6000];
        for (double f : hz) {
            peak[(int) Math.round(f / BIN_HZ)] = 1;
        }
        return peak;
    }

    /** A row is rounded to 0.1 dB: half of that is 0.577 %, as a rectangle 0.577 · 2/√3 %. */
    @Test
    void aLineAtARowIsAsGoodAsItsRounding() {
        double share = new MeterDoubt(lines(10), BIN_HZ).share(FlutterBand.WEIGHTED);
        assertEquals(0.05 * Math.log(10) / 20 * 2 / Math.sqrt(3), share, 1e-9);
    }

    /** Two lines of 1 at 4 and 10 Hz, weighted 0 and −2.1 dB: powers 1 and 0.617. */
    @Test
    void roundingOfTwoRowsPartlyAverages() {
        double share = new MeterDoubt(lines(4, 10), BIN_HZ).share(FlutterBand.WEIGHTED);
        double second = Math.pow(10, -0.21);
        double average = Math.hypot(1, second) / (1 + second);
        assertEquals(0.05 * Math.log(10) / 20 * 2 / Math.sqrt(3) * average, share, 1e-9);
    }

    /** In the middle of its band a line is read alike by all: a blunt edge has (6/30)⁴/2 less. */
    @Test
    void aLineFarFromTheEdgesIsSure() {
        assertEquals(0, new MeterDoubt(lines(30), BIN_HZ).share(FlutterBand.FLUTTER), 1e-3);
    }

    /** At 6 Hz ours has half the power; a sharp edge has all: half of 100 %, times 2/√3. */
    @Test
    void aLineOnTheEdgeBelongsToBothBands() {
        double share = new MeterDoubt(lines(6), BIN_HZ).share(FlutterBand.FLUTTER);
        assertEquals(0.5 * 2 / Math.sqrt(3), share, 2e-3);
    }

    @Test
    void nothingIsSure() {
        assertEquals(0, new MeterDoubt(new double[100], BIN_HZ).share(FlutterBand.WEIGHTED));
    }
}
