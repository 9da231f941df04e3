package offtape.report.measure.speed;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import offtape.core.standard.FlutterBand;
import offtape.core.standard.Iec60386;
import offtape.report.result.SpeedTrace;
import org.junit.jupiter.api.Test;

/** Readings of deviations that are given by formula, at 500 values a second. */
class SpeedReaderTest {

    private static final double RATE = 500;

    /** 1.5 % fast with wow of 0.1 % at 4 Hz, in whole periods. */
    private static final SpeedReader WOW =
            reader(8, t -> 1.5 + 0.1 * Math.sin(2 * Math.PI * 4 * t), 4000);

    private static SpeedReader reader(double seconds, DoubleUnaryOperator percent, int atOnce) {
        double[] x = new double[(int) Math.round(seconds * RATE)];
        Arrays.setAll(x, i -> percent.applyAsDouble(i / RATE));
        SpeedReader reader = new SpeedReader(Iec60386.atRate(RATE), x.length);
        reader.next(new double[0]);
        for (int i = 0; i < x.length; i += atOnce) {
            reader.next(Arrays.copyOfRange(x, i, Math.min(x.length, i + atOnce)));
        }
        reader.end();
        return reader;
    }

    /** 4 Hz has a weight of 0 dB: peak 0.1 %, rms 0.0707 %; 1/(1 + (4/6)⁶) of the power is wow. */
    @Test
    void everyReadingOfASine() {
        assertEquals(1.5, WOW.mean(), 1e-9);
        assertEquals(0.0002, WOW.meanUncertainty(), 1e-6);
        assertEquals(0.1, WOW.weightedPeak(), 3e-4);
        assertEquals(0.1, WOW.unweightedPeak(), 3e-4);
        assertEquals(0.0997452, WOW.twoSigma(), 2e-4);
        double rms = 0.1 * Math.sqrt(0.5);
        double wow = 1 / (1 + Math.pow(4 / 6.0, 6));
        assertEquals(rms, WOW.rms(FlutterBand.WEIGHTED), 2e-4);
        assertEquals(rms, WOW.rms(FlutterBand.UNWEIGHTED), 1e-4);
        assertEquals(rms, WOW.rms(FlutterBand.AMERICAN), 1e-4);
        assertEquals(rms * Math.sqrt(wow), WOW.rms(FlutterBand.WOW), 1e-4);
        assertEquals(rms * Math.sqrt(1 - wow), WOW.rms(FlutterBand.FLUTTER), 1e-4);
        assertEquals(0, WOW.drift(), "less than ten seconds");
        assertEquals(0, WOW.driftDoubt());
    }

    @Test
    void howTheDeviationComesInChangesNothing() {
        SpeedReader bits = reader(8, t -> 1.5 + 0.1 * Math.sin(2 * Math.PI * 4 * t), 777);
        assertEquals(WOW.mean(), bits.mean(), 1e-12);
        // What filters start from is the mean of what comes first.
        assertEquals(WOW.weightedPeak(), bits.weightedPeak(), 1e-7);
        assertEquals(WOW.unweightedPeak(), bits.unweightedPeak(), 1e-7);
        assertEquals(WOW.twoSigma(), bits.twoSigma(), 1e-7);
        for (FlutterBand band : FlutterBand.values()) {
            if (band != FlutterBand.CHARTED) {
                assertEquals(WOW.rms(band), bits.rms(band), 1e-7);
            }
        }
        assertArrayEquals(WOW.modulation(), bits.modulation(), 1e-7);
        assertArrayEquals(WOW.trace().highestPercent(), bits.trace().highestPercent(), 1e-7);
    }

    /** 25 values a stretch of 0.05 s; wow of 0.2 Hz is followed within what it changes in one. */
    @Test
    void theTraceShowsTheDeviationFromTheMean() {
        DoubleUnaryOperator wow = t -> 0.1 * Math.sin(2 * Math.PI * 0.2 * t);
        SpeedTrace trace = reader(10, t -> 2 + wow.applyAsDouble(t), 1000).trace();
        assertEquals(200, trace.seconds().length);
        for (int i = 40; i < 160; i++) {
            double t = trace.seconds()[i];
            assertEquals(0.025 + 0.05 * i, t, 1e-9);
            double one = wow.applyAsDouble(t - 0.025);
            double other = wow.applyAsDouble(t + 0.023);
            assertEquals(Math.min(one, other), trace.lowestPercent()[i], 1e-4);
            assertEquals(Math.max(one, other), trace.highestPercent()[i], 1e-4);
        }
    }

    /**
     * The weighted reading in half seconds, from 3 s after the beginning to 1.5 s before the end.
     */
    @Test
    void readingsOverTimeAreKept() {
        double[] seconds = WOW.readings().seconds();
        assertArrayEquals(new double[] {3.25, 3.75, 4.25, 4.75, 5.25, 5.75, 6.25}, seconds, 1e-9);
        for (double percent : WOW.readings().weightedPeakPercent()) {
            assertEquals(0.1, percent, 5e-4);
        }
        assertEquals(false, WOW.halfSeconds().hasWorst());
    }

    /** About the mean of what was taken, not about the mean of the first values. */
    @Test
    void theModulationIsAboutItsOwnMean() {
        double[] x = new double[600];
        Arrays.setAll(x, i -> i < 300 ? 1 : 3);
        SpeedReader reader = new SpeedReader(Iec60386.atRate(RATE), x.length);
        assertEquals(0, reader.modulation().length);
        reader.next(Arrays.copyOf(x, 300));
        reader.next(Arrays.copyOfRange(x, 300, 600));
        reader.end();
        double[] modulation = reader.modulation();
        assertEquals(600, modulation.length);
        assertEquals(-1, modulation[0], 1e-12);
        assertEquals(1, modulation[599], 1e-12);
        assertEquals(2, reader.mean(), 1e-12);
    }

    /** 10 Hz has its height in the spectrum, and drift of 0.6 % a minute reaches 0.12 % in 12 s. */
    @Test
    void spectrumAndDriftAreOfTheSameDeviation() {
        SpeedReader reader =
                reader(12, t -> 0.01 * t + 0.05 * Math.sin(2 * Math.PI * 10 * t), 1000);
        double[] percent = reader.spectrum().peakPercent();
        double[] hz = reader.spectrum().frequencyHz();
        int from = -Arrays.binarySearch(hz, 5) - 1;
        assertTrue(from > 0);
        double highest = Arrays.stream(percent, from, percent.length).max().orElseThrow();
        assertEquals(0.05, highest, 0.002);
        assertEquals(0.12, reader.drift(), 1e-4);
        assertTrue(reader.driftDoubt() < 1e-4);
    }

    /** 2.2 turns of wow in ten seconds are not kept out of drift, and the doubt tells. */
    @Test
    void wowThatIsAlmostDriftLeavesItInDoubt() {
        SpeedReader reader = reader(12, t -> 0.1 * Math.sin(2 * Math.PI * 0.22 * t), 1000);
        double drift = reader.drift();
        assertTrue(2 * reader.driftDoubt() > drift, drift + " by " + reader.driftDoubt());
    }

    /** Detectors of any make read slowly growing wow alike, up to its highest at the end. */
    @Test
    void allDetectorsSeeTheEnd() {
        SpeedReader reader = reader(10, t -> 0.01 * t * Math.sin(2 * Math.PI * 4 * t), 1000);
        // Readings end 1.5 s before the end; the pointer is 0.32 s behind, its store 0.03 s.
        assertEquals(0.0815, reader.weightedPeak(), 0.0005);
        assertEquals(0.0815, reader.unweightedPeak(), 0.0005);
        assertEquals(0, reader.weightedPeakApart(), 0.01);
        assertEquals(0, reader.unweightedPeakApart(), 0.01);
    }
}
