package offtape.report.measure.transport;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.Arrays;
import java.util.List;
import offtape.core.standard.FlutterBand;
import offtape.core.standard.Iec60386;
import offtape.core.unit.Quantity;
import offtape.report.measure.line.FoundLine;
import offtape.report.measure.speed.SpeedReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A deviation of 0.1 % peak at 5 Hz as it was undone, heads 0.1 s apart, 20 s: its rms is 0.0707 %
 * in the band without weighting.
 */
class TransportReadingsTest {

    private static final Iec60386 METER = Iec60386.atRate(500);
    private static final SpeedReader READER = reader(0.1);
    private static final double RMS = READER.rms(FlutterBand.UNWEIGHTED);
    private static final double LEAST = 0.0002;

    private static SpeedReader reader(double peak) {
        double[] x = new double[10_000];
        Arrays.setAll(x, i -> peak * Math.sin(2 * Math.PI * 5 * i / 500.0));
        SpeedReader reader = new SpeedReader(METER, x.length);
        reader.next(x);
        reader.end();
        return reader;
    }

    private static UndoneLine line(double hz) {
        double gain = 2 * Math.abs(Math.sin(Math.PI * hz * 0.1));
        return new UndoneLine(new FoundLine(hz, hz, 0, 0.1 * gain, 0, 0, 0), 0.1, 0, gain);
    }

    private static Recovery recovery(
            double sigma, double density, List<UndoneLine> lines, List<FoundLine> heard) {
        return new Recovery(
                new CombDoubt(new Comb(0.1, sigma), 20, 0, f -> density, f -> 1e-100),
                lines,
                heard,
                260);
    }

    @Test
    void whatIsAllThereReadsAsItIs() {
        TransportReadings readings =
                new TransportReadings(
                        READER, recovery(0, 1e-30, List.of(line(5)), List.of(line(5).heard())));
        Quantity rms = readings.rms(FlutterBand.UNWEIGHTED);
        assertEquals(0.1 / Math.sqrt(2), rms.value(), 1e-4);
        assertEquals("%", rms.unit());
        assertEquals(0.01 * RMS + LEAST, rms.uncertainty(), 1e-12);
        assertEquals(0.09, readings.peak(FlutterBand.UNWEIGHTED, 0.09).value(), 1e-12);
        assertEquals(
                0.0009 + LEAST, readings.peak(FlutterBand.UNWEIGHTED, 0.09).uncertainty(), 1e-12);
        assertEquals(0.08, readings.statistic(FlutterBand.UNWEIGHTED, 0.08).value(), 1e-12);
        assertEquals(1, readings.share(FlutterBand.UNWEIGHTED), 1e-9);
    }

    /**
     * The power that did not come through is added; a peak grows as the rms does, and may be off by
     * a third of the rms of what is missing.
     */
    @Test
    void whatDidNotComeThroughIsAdded() {
        Recovery recovery = recovery(0, 1e-4, List.of(), List.of());
        Recovery.Lack lack = recovery.of(FlutterBand.UNWEIGHTED);
        TransportReadings readings = new TransportReadings(READER, recovery);
        double whole = Math.sqrt(RMS * RMS + lack.lost());
        double deviation = lack.deviation() / (2 * whole);
        Quantity rms = readings.rms(FlutterBand.UNWEIGHTED);
        assertEquals(whole, rms.value(), 1e-12);
        assertEquals(Math.hypot(0.01 * whole, 2 * deviation) + LEAST, rms.uncertainty(), 1e-12);
        double enlarged = whole / RMS;
        Quantity statistic = readings.statistic(FlutterBand.UNWEIGHTED, 0.08);
        assertEquals(0.08 * enlarged, statistic.value(), 1e-12);
        assertEquals(
                Math.hypot(0.0008 * enlarged, 2 * 0.08 * enlarged * deviation / whole) + LEAST,
                statistic.uncertainty(),
                1e-12);
        Quantity peak = readings.peak(FlutterBand.UNWEIGHTED, 0.09);
        double alike = 0.09 * enlarged * deviation / whole;
        double missing = Math.sqrt(lack.lost()) / 3;
        assertEquals(0.09 * enlarged, peak.value(), 1e-12);
        assertEquals(
                Math.hypot(0.0009 * enlarged, 2 * Math.hypot(alike, missing)) + LEAST,
                peak.uncertainty(),
                1e-12);
    }

    /**
     * A line of the power 0.005 at 2.5 Hz, whose logarithm changes by 15.708 a second of delay:
     * with a delay known to 1 ms its mean square has a standard deviation of 7.85e-5, the rms one
     * of 7.85e-5/(2 · 0.0707) = 5.55e-4.
     */
    @Test
    void theDelaysUncertaintyCounts() {
        TransportReadings readings =
                new TransportReadings(
                        READER,
                        recovery(1e-3, 1e-30, List.of(line(2.5)), List.of(line(2.5).heard())));
        assertEquals(
                Math.hypot(0.000707, 2 * 5.55e-4) + LEAST,
                readings.rms(FlutterBand.UNWEIGHTED).uncertainty(),
                1e-5);
    }

    /** Where nothing was undone, what is missing is known no better than by its own root. */
    @Test
    void aStillTransportReadsNothing() {
        SpeedReader still = reader(0);
        TransportReadings silent =
                new TransportReadings(still, recovery(0, 0, List.of(), List.of()));
        Quantity rms = silent.rms(FlutterBand.UNWEIGHTED);
        assertEquals(0, rms.value(), 0);
        assertEquals(LEAST, rms.uncertainty(), 1e-15);
        assertEquals(0, silent.peak(FlutterBand.UNWEIGHTED, 0).value(), 0);
        assertEquals(LEAST, silent.statistic(FlutterBand.UNWEIGHTED, 0).uncertainty(), 1e-15);
        Recovery recovery = recovery(3e-3, 1e-4, List.of(line(2.5)), List.of(line(2.5).heard()));
        Recovery.Lack lack = recovery.of(FlutterBand.WOW);
        TransportReadings hidden = new TransportReadings(still, recovery);
        double whole = Math.sqrt(lack.lost());
        double square = Math.hypot(lack.deviation(), lack.byDelay());
        double deviation = Math.min(square / (2 * whole), Math.sqrt(square));
        assertEquals(whole, hidden.rms(FlutterBand.WOW).value(), 1e-15);
        assertEquals(
                Math.hypot(0.01 * whole, 2 * deviation) + LEAST,
                hidden.rms(FlutterBand.WOW).uncertainty(),
                1e-12);
        assertEquals(0.02, hidden.peak(FlutterBand.WOW, 0.02).value(), 1e-15);
    }

    /**
     * Beside the line undone one of the peak p is heard at the zero of 20 Hz, where only 1e-4 of
     * the power comes through: p²/2/1e-4 may be hidden. A reading is told if seven tenths of the
     * power are there: 0.005 of 0.005 + 0.00214.
     */
    @ParameterizedTest
    @CsvSource({"0.00213, 1", "0.00216, 0"})
    void aReadingOfTooLittleIsNotTold(double hiddenPower, int told) {
        double peak = Math.sqrt(2 * 1e-4 * hiddenPower);
        FoundLine hidden = new FoundLine(20, 20, 0, peak, 0, 0, 0);
        TransportReadings readings =
                new TransportReadings(
                        READER,
                        recovery(0, 1e-30, List.of(line(5)), List.of(line(5).heard(), hidden)));
        assertEquals(told == 1, readings.rms(FlutterBand.UNWEIGHTED).isKnown());
        assertEquals(told == 1, readings.peak(FlutterBand.UNWEIGHTED, 1).isKnown());
        assertEquals(told == 1, readings.statistic(FlutterBand.UNWEIGHTED, 1).isKnown());
    }

    /** Four tenths: 0.005 of 0.0125. */
    @Test
    void whatIsNotToldHasItsShareAsReason() {
        FoundLine hidden = new FoundLine(20, 20, 0, Math.sqrt(2 * 1e-4 * 0.0075), 0, 0, 0);
        Quantity rms =
                new TransportReadings(
                                READER,
                                recovery(
                                        0,
                                        1e-30,
                                        List.of(line(5)),
                                        List.of(line(5).heard(), hidden)))
                        .rms(FlutterBand.UNWEIGHTED);
        assertFalse(rms.isKnown());
        assertEquals(
                "With the heads this far apart, and this little known of how far, the return shows"
                        + " only 40 % of this reading.",
                rms.reason());
    }
}
