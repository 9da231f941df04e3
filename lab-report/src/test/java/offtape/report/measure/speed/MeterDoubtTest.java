package offtape.report.measure.speed;

import static org.junit.jupiter.api.Assertions.assertEquals;

import offtape.core.standard.FlutterBand;
import offtape.core.standard.Iec60386;
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

    /** At 6 and at 200 Hz half of each, one apart from the other: √(½² + ½²) of 2 · (½ + ½). */
    @Test
    void bothEdgesOfABandErrByThemselves() {
        double share = new MeterDoubt(lines(6, 200), BIN_HZ).share(FlutterBand.FLUTTER);
        assertEquals(Math.sqrt(0.5) / 2 * 2 / Math.sqrt(3), share, 2e-3);
    }

    /**
     * On one side of an edge a sharp one loses what it gains on the other: ours has 1/(1 + 1.2⁶) =
     * 0.250879 of a line of 5 Hz and 1/(1 + (6/7)⁶) = 0.716041 of one of 7 Hz, a sharp one nothing
     * and all: 0.283959 − 0.250879 of 2 · 0.966920. A blunt one with the fourth powers differs by
     * less: 0.074472 − 0.066595.
     */
    @Test
    void whatAnEdgeGivesItTakesOnItsOtherSide() {
        double share = new MeterDoubt(lines(5, 7), BIN_HZ).share(FlutterBand.FLUTTER);
        assertEquals(0.033080 / (2 * 0.966920) * 2 / Math.sqrt(3), share, 1e-5);
    }

    /** At 12 Hz ours lacks 1/65 of a line, and a blunt edge 1/17: the blunt one is farther. */
    @Test
    void theFartherMeterCounts() {
        double share = new MeterDoubt(lines(12), BIN_HZ).share(FlutterBand.FLUTTER);
        double ours = 64.0 / 65;
        assertEquals((ours - 16.0 / 17) / (2 * ours) * 2 / Math.sqrt(3), share, 1e-5);
    }

    /** 4.47 Hz is nearly half the way from 4 to 5 Hz: rows round it together, each in its share. */
    @Test
    void aLineBetweenTwoRowsIsRoundedByBoth() {
        double[] peak = new double[600];
        peak[50] = 1;
        double hz = 4.472135955;
        double share = new MeterDoubt(peak, hz / 50).share(FlutterBand.WEIGHTED);
        double place = Iec60386.weightingRow(hz) % 1;
        double rows = 0.05 * Math.log(10) / 20 * 2 / Math.sqrt(3) * Math.hypot(place, 1 - place);
        double ours = Math.pow(FlutterBand.WEIGHTED.gain(hz), 2);
        double straight = Math.pow(FlutterBand.WEIGHTED.sharpGain(hz), 2);
        double curve = 2 / Math.sqrt(2) * Math.abs(straight - ours) / (2 * ours);
        assertEquals(Math.hypot(rows, curve), share, 1e-9);
    }

    /** Slower than 0.05 Hz is no wow: not a line there nor the mean. */
    @Test
    void whatIsSlowerThanTheBandsDoesNotCount() {
        double[] peak = new double[6000];
        peak[0] = 1;
        peak[4] = 1;
        assertEquals(0, new MeterDoubt(peak, 0.01).share(FlutterBand.WEIGHTED));
        assertEquals(0, new MeterDoubt(peak, 0.01).share(FlutterBand.WOW));
        // At 0.06 Hz, x = 0.2/0.06 under the edge, ours has 1/(1 + x⁶), a blunt one 1/(1 + x⁴).
        peak[6] = 1;
        assertEquals(
                (1372.742 / 124.457 - 1) / 2 * 2 / Math.sqrt(3),
                new MeterDoubt(peak, 0.01).share(FlutterBand.UNWEIGHTED),
                1e-3);
    }

    @Test
    void nothingIsSure() {
        for (FlutterBand band : FlutterBand.values()) {
            assertEquals(0, new MeterDoubt(new double[100], BIN_HZ).share(band));
        }
        assertEquals(0, new MeterDoubt(new double[100], BIN_HZ).share(FlutterBand.WEIGHTED));
    }
}
