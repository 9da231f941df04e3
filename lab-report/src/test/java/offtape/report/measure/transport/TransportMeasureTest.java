package offtape.report.measure.transport;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.stream.IntStream;
import offtape.core.standard.Iec60386;
import offtape.core.unit.Quantity;
import offtape.reference.Source;
import offtape.report.measure.speed.HeardDeviation;
import offtape.report.result.RateBand;
import offtape.report.result.SpeedComponent;
import offtape.report.result.TransportSpeed;
import org.junit.jupiter.api.Test;

class TransportMeasureTest {

    private static final Iec60386 METER = Iec60386.atRate(500);

    private static final double DELAY_S = 0.157;

    private static TransportSpeed measured(DrawnMotion motion, double sigma) {
        HeardDeviation heard = motion.heard(DELAY_S, MadeReturn.HISS);
        return TransportMeasure.of(
                METER,
                heard,
                DrawnTransport.lines(heard),
                new HeadDelay(DELAY_S, sigma, "Given.", null),
                Quantity.unknown("It cancels."),
                0);
    }

    private static DrawnMotion still(double seconds) {
        return new DrawnMotion(seconds, 500, DELAY_S, 5);
    }

    /**
     * r = a·(sin ωt − sin ω(t − τ)) has the peak 2·a·|sin πfτ|: at 3.2 Hz and 157 ms 1.9999·a, at
     * 6.1 Hz 0.2674·a. Undone both must read a, the rms of 0.2 to 200 Hz a·√(2/2) for two of them,
     * and the weighted rms, −0.6 dB at 3.15 Hz and −0.9 dB at 6.3 Hz or nearly nothing, a little
     * less.
     */
    @Test
    @Source("IEC 60386, weighting table; the rest derived here")
    void linesReadWhatTheTransportDoes() {
        TransportSpeed own = measured(still(20).line(3.2, 0.06).line(6.1, 0.06), 10e-6);
        assertEquals(2, own.components().size());
        for (SpeedComponent line : own.components()) {
            assertEquals(0.06, line.peakPercent(), line.peakUncertaintyPercent());
            assertTrue(line.peakUncertaintyPercent() < 0.05 * 0.06);
        }
        assertEquals(0.06, own.unweightedRms().value(), 0.005 * 0.06);
        double weighted = own.weightedRms().value();
        assertTrue(weighted < 0.0602 && weighted > 0.0535, weighted + " %");
        assertFalse(own.deviation().isKnown());
    }

    /** Zeros at 6.369 Hz and its multiples, and at 0 Hz; everything else is there up to 200 Hz. */
    @Test
    void theRecoveredBandsLeaveOutTheZeros() {
        TransportSpeed own = measured(still(30).noise(f -> f > 0.3 && f < 150 ? 1e-5 : 0), 20e-6);
        assertEquals(32, own.recoveredBands().size());
        double inside = 0;
        for (RateBand b : own.recoveredBands()) {
            double gap = 1 / DELAY_S * Math.ceil(b.fromHz() * DELAY_S - 0.5);
            assertTrue(Math.abs(b.fromHz() - gap) > 0.01 && b.fromHz() < gap + 0.6, b.toString());
            inside += b.toHz() - b.fromHz();
        }
        assertTrue(inside > 180 && inside < 199, inside + " Hz");
        assertTrue(own.notRecoveredShare() < 0.05);
        double[] hz = own.spectrum().frequencyHz();
        double[] doubt = own.spectrum().uncertaintyPercent();
        double[] peak = own.spectrum().peakPercent();
        double beside = share(hz, doubt, peak, 25.47, 0.03);
        double between = share(hz, doubt, peak, 28.66, 1);
        assertTrue(beside > 5 * between, beside + " beside a zero, " + between + " between two");
    }

    private static double share(
            double[] hz, double[] doubt, double[] peak, double around, double reach) {
        return IntStream.range(0, hz.length)
                .filter(i -> Math.abs(hz[i] - around) < reach + 0.01 * around)
                .mapToDouble(i -> doubt[i] / peak[i])
                .max()
                .orElseThrow();
    }

    /** If the delay is hardly known, fast readings are unknown, with a sentence. */
    @Test
    void aVagueDelayLeavesTheFastReadingsUnknown() {
        DrawnMotion motion = still(20).noise(f -> f > 0.3 && f < 100 ? 1e-5 : 0).line(1.1, 0.1);
        TransportSpeed own = measured(motion, 8e-3);
        assertFalse(own.flutterRms().isKnown());
        assertTrue(own.flutterRms().reason().contains("shows only"), own.flutterRms().reason());
        assertTrue(own.wowRms().isKnown());
        assertTrue(own.wowRms().uncertainty() > 0.03 * own.wowRms().value());
    }

    /**
     * A constant of the return is two clocks or a drift: 0.001 % over 0.157 s is 0.38 % a minute.
     */
    @Test
    void aDriftThatMayBeClocksIsNotTold() {
        HeardDeviation heard = still(20).line(2, 0.05).heard(DELAY_S, MadeReturn.HISS);
        HeadDelay delay = new HeadDelay(DELAY_S, 1e-5, "Given.", null);
        Quantity cancels = Quantity.unknown("It cancels.");
        Quantity clocks =
                TransportMeasure.of(
                                METER, heard, DrawnTransport.lines(heard), delay, cancels, 0.001)
                        .drift();
        assertTrue(clocks.reason().contains("clocks"));
        assertTrue(
                TransportMeasure.of(METER, heard, DrawnTransport.lines(heard), delay, cancels, 1e-6)
                        .drift()
                        .isKnown());
    }

    @Test
    void shortTonesTellNothing() {
        assertFalse(measured(still(3).line(2, 0.05), 1e-5).weightedRms().isKnown());
    }
}
