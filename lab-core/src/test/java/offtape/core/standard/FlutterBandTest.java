package offtape.core.standard;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import offtape.core.unit.Decibels;
import offtape.reference.ReferenceTable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The gains of the bands, and those that other meters may have. */
class FlutterBandTest {

    private static final double[] SOME_HZ = {0.1, 0.2, 0.5, 1, 2, 4, 6, 9, 20, 50, 100, 200, 300};

    /** What is neither wow nor flutter is outside of the whole band. */
    @Test
    void thePowersOfWowAndFlutterAddUp() {
        for (double hz : SOME_HZ) {
            double wow = Math.pow(FlutterBand.WOW.gain(hz), 2);
            double flutter = Math.pow(FlutterBand.FLUTTER.gain(hz), 2);
            assertEquals(
                    Math.pow(FlutterBand.UNWEIGHTED.gain(hz), 2), wow + flutter, 1e-12, hz + " Hz");
        }
    }

    /** A Butterworth filter passes half of the power at its edge, here with no other one near. */
    @Test
    void halfThePowerPassesAtTheEdges() {
        double half = Math.sqrt(0.5);
        assertEquals(half, FlutterBand.UNWEIGHTED.gain(0.2), 1e-9);
        assertEquals(half, FlutterBand.UNWEIGHTED.gain(200), 1e-9);
        assertEquals(half, FlutterBand.AMERICAN.gain(0.5), 1e-9);
        assertEquals(half, FlutterBand.AMERICAN.bluntGain(0.5), 1e-9);
        assertEquals(half, FlutterBand.AMERICAN.bluntGain(200), 1e-4);
        assertEquals(half, FlutterBand.CHARTED.gain(200), 1e-9);
        assertEquals(half, FlutterBand.CHARTED.bluntGain(200), 1e-9);
        assertEquals(half, FlutterBand.WOW.bluntGain(6), 1e-4);
        assertEquals(half, FlutterBand.FLUTTER.bluntGain(6), 1e-4);
    }

    /** Order 3 loses 18 dB an octave far below its edge, order 2 12 dB, sharp ones everything. */
    @Test
    void slopesAreThoseOfTheirOrder() {
        double own = FlutterBand.UNWEIGHTED.gain(0.01) / FlutterBand.UNWEIGHTED.gain(0.005);
        double blunt =
                FlutterBand.UNWEIGHTED.bluntGain(0.01) / FlutterBand.UNWEIGHTED.bluntGain(0.005);
        assertEquals(8, own, 0.01);
        assertEquals(4, blunt, 0.01);
        assertEquals(0, FlutterBand.UNWEIGHTED.sharpGain(0.199));
        assertEquals(1, FlutterBand.UNWEIGHTED.sharpGain(0.2));
        assertEquals(1, FlutterBand.WOW.sharpGain(6));
        assertEquals(0, FlutterBand.WOW.sharpGain(6.01));
        assertEquals(0, FlutterBand.FLUTTER.sharpGain(5.99));
        assertEquals(1, FlutterBand.CHARTED.sharpGain(0.001));
        assertEquals(0, FlutterBand.CHARTED.sharpGain(201));
    }

    @ParameterizedTest
    @EnumSource(value = FlutterBand.class, mode = EnumSource.Mode.EXCLUDE, names = "WEIGHTED")
    void theMiddleOfABandPassesWhole(FlutterBand band) {
        double hz = band.middleHz();
        assertEquals(1, band.gain(hz), 0.02, "gain");
        assertEquals(1, band.sharpGain(hz), 0.03, "sharp");
        assertEquals(1, band.bluntGain(hz), 0.03, "blunt");
    }

    /** IEC 60386, table of the weighting: rows as they stand, straight lines between. */
    @Test
    void otherMetersMayDrawStraightLinesBetweenTheRows() {
        ReferenceTable table = ReferenceTable.load("wf-weighting-iec60386");
        double[] hz = table.numbers("frequency");
        double[] db = table.numbers("weighting");
        for (int i = 0; i < hz.length; i++) {
            assertEquals(db[i], sharpDb(hz[i]), 1e-9, hz[i] + " Hz");
            assertEquals(i, Iec60386.weightingRow(hz[i]), 1e-9);
        }
        for (int i = 0; i + 1 < hz.length; i++) {
            double between = Math.sqrt(hz[i] * hz[i + 1]);
            assertEquals((db[i] + db[i + 1]) / 2, sharpDb(between), 1e-9, between + " Hz");
            assertEquals(i + 0.5, Iec60386.weightingRow(between), 1e-9);
        }
        assertEquals(hz.length, Iec60386.weightingRows());
    }

    private static double sharpDb(double hz) {
        assertEquals(FlutterBand.WEIGHTED.sharpGain(hz), FlutterBand.WEIGHTED.bluntGain(hz));
        return Decibels.ofAmplitude(FlutterBand.WEIGHTED.sharpGain(hz));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.01, 0.05, 400, 1000})
    void beyondTheTableBothGoOnAlike(double hz) {
        assertEquals(FlutterBand.WEIGHTED.gain(hz), FlutterBand.WEIGHTED.sharpGain(hz), 1e-12);
        double row = Iec60386.weightingRow(hz);
        assertTrue(row == 0 || row == Iec60386.weightingRows() - 1, "row " + row);
    }
}
