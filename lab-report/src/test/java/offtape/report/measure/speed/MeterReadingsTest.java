package offtape.report.measure.speed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import offtape.core.standard.FlutterBand;
import offtape.core.standard.Iec60386;
import offtape.core.unit.Quantity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Uncertainties of readings, part by part: a wow of 4 Hz and 0.1 % that was read for eight seconds,
 * on a spectrum of one line, so that what other meters read is known by hand.
 */
class MeterReadingsTest {

    private static final double SECONDS = 8;

    /** A row of the weighting is rounded to 0.1 dB: half of that, as a rectangle, k = 2. */
    private static final double ROUNDING = 0.05 * Math.log(10) / 20 * 2 / Math.sqrt(3);

    private static final ToneStream TONE = Tones.stream(Tones.audio(3, Tones.steady(3150)), 3150);
    private static final SpeedReader READER = reader(1);

    private static SpeedReader reader(double share) {
        double[] x = new double[(int) (1000 * SECONDS)];
        Arrays.setAll(
                x, i -> i % 1000 < 1000 * share ? 0.1 * Math.sin(2 * Math.PI * 4 * i / 1000) : 0);
        SpeedReader reader = new SpeedReader(Iec60386.atRate(1000), x.length);
        reader.next(x);
        reader.end();
        return reader;
    }

    private static MeterReadings readings(SpeedReader reader, NoiseFloor floor) {
        double[] peak = new double[1000];
        peak[40] = 1;
        return new MeterReadings(reader, floor, new MeterDoubt(peak, 0.1), SECONDS);
    }

    /** Noise that reads so much in a band. */
    private static NoiseFloor floor(FlutterBand band, double percent) {
        double unit = new NoiseFloor(TONE, 1e-10).rms(band);
        return new NoiseFloor(TONE, 1e-10 * Math.pow(percent / unit, 2));
    }

    /** Without noise: 0.05 % for our filters, the rounding of the weighting, and 0.00002 %. */
    @Test
    void aSteadyReadingIsAsSureAsTheStandard() {
        MeterReadings clean = readings(READER, new NoiseFloor(TONE, 0));
        Quantity rms = clean.rms(FlutterBand.WEIGHTED);
        assertEquals(0.1 * Math.sqrt(0.5), rms.value(), 1e-4);
        assertEquals("%", rms.unit());
        assertEquals(rms.value() * Math.hypot(0.0005, ROUNDING) + 2e-5, rms.uncertainty(), 1e-9);
        Quantity twice = clean.rms(0.2, FlutterBand.WEIGHTED);
        assertEquals(0.2, twice.value());
        assertEquals(0.2 * Math.hypot(0.0005, ROUNDING) + 2e-5, twice.uncertainty(), 1e-9);
        Quantity twoSigma = clean.twoSigma();
        assertEquals(0.099745, twoSigma.value(), 2e-4);
        assertEquals(
                twoSigma.value() * Math.hypot(0.002, ROUNDING) + 2e-5,
                twoSigma.uncertainty(),
                1e-9);
    }

    /**
     * Noise of rms n adds to a reading v as a power, v − √(v² − n²) of it; and over 8 s in 100 Hz,
     * √(2 · 100 · 8) = 40 independent values, it moves the reading by chance by 2·n/40.
     */
    @ParameterizedTest
    @CsvSource({"0.1, 0.06, 0.02", "0.1, 0.08, 0.04", "0.1, 0.1, 0.1", "0.02, 0.05, 0.02"})
    void noiseThatMayBeInAReadingIsDoubt(double value, double noise, double added) {
        Quantity read =
                readings(READER, floor(FlutterBand.WEIGHTED, noise))
                        .rms(value, FlutterBand.WEIGHTED);
        double share = value * Math.hypot(0.0005, ROUNDING);
        assertEquals(Math.hypot(share, 2 * noise / 40) + added + 2e-5, read.uncertainty(), 1e-8);
    }

    /**
     * A peak that noise of 0.03 % may raise to twice that: 0.1 − √(0.1² − 0.06²) = 0.02. Its
     * detector gathers for 50 ms, √(2 · 100 · 0.05) = √10 values. All detectors read a steady wow
     * alike, within the 3 % of e⁻⁹ that a pointer of 0.34 s lacks after three seconds.
     */
    @Test
    void noiseMovesAPeakMoreThanAMean() {
        Quantity peak = readings(READER, floor(FlutterBand.WEIGHTED, 0.03)).weightedPeak(0.1);
        assertEquals(0.1, peak.value());
        double share = 0.1 * Math.hypot(0.002, ROUNDING);
        assertEquals(
                Math.hypot(share, 0.03 / Math.sqrt(10)) + 0.02 + 2e-5, peak.uncertainty(), 1e-5);
        Quantity unweighted =
                readings(READER, floor(FlutterBand.UNWEIGHTED, 0.03)).unweightedPeak();
        assertEquals(0.1, unweighted.value(), 3e-4);
        double v = unweighted.value();
        // 4 Hz lies far from both edges: blunt and sharp ones differ by some 1e-5 of it
        assertEquals(
                Math.hypot(0.002 * v, 0.03 / Math.sqrt(10)) + v - Math.sqrt(v * v - 0.0036) + 2e-5,
                unweighted.uncertainty(),
                1e-5);
    }

    /**
     * Wow for 0.1 s of each second: detectors at both ends of what the standard allows read it
     * apart, by no more than the table's 4 % of 100, and that share of the peak is doubt.
     */
    @Test
    void detectorsThatDifferAreDoubt() {
        SpeedReader bursts = reader(0.25);
        double apart = bursts.weightedPeakApart();
        assertTrue(apart > 0.003 && apart < 0.04, "apart " + apart);
        Quantity peak = readings(bursts, new NoiseFloor(TONE, 0)).weightedPeak(0.1);
        double detector = Math.hypot(0.002, 2 / Math.sqrt(3) * apart);
        assertEquals(0.1 * Math.hypot(ROUNDING, detector) + 2e-5, peak.uncertainty(), 1e-9);
        double unweighted = bursts.unweightedPeakApart();
        assertTrue(unweighted > 0.003 && unweighted < 0.04, "apart " + unweighted);
        assertTrue(READER.weightedPeakApart() < 3e-4);
        SpeedReader nothing = new SpeedReader(Iec60386.atRate(1000), 100);
        assertEquals(0, nothing.weightedPeakApart());
        assertEquals(0, nothing.rms(FlutterBand.WOW));
    }
}
