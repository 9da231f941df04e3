package offtape.report.measure.transport;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import offtape.core.standard.FlutterBand;
import offtape.report.measure.line.FoundLine;
import offtape.report.result.RateBand;
import org.junit.jupiter.api.Test;

/** Heads 0.1 s apart, zeros at multiples of 10 Hz, a tone of 20 s: (2 · 0.1/20)² = 1e-4. */
class RecoveryTest {

    private static final double EVEN = 1e-4;

    private static Recovery of(
            double sigma, DoubleUnaryOperator density, double noise, double bandHz) {
        return new Recovery(
                new CombDoubt(new Comb(0.1, sigma), 20, 0, density, f -> noise),
                List.of(),
                List.of(),
                bandHz);
    }

    private static UndoneLine undone(double hz, double peak) {
        double gain = 2 * Math.abs(Math.sin(Math.PI * hz * 0.1));
        return new UndoneLine(line(hz, gain * peak), peak, 0, gain);
    }

    private static FoundLine line(double hz, double peak) {
        return new FoundLine(hz, hz, 0.001, peak, 1e-6, 0, 0);
    }

    private static Recovery withLines(
            double sigma, double density, List<UndoneLine> undone, List<FoundLine> heard) {
        return new Recovery(
                new CombDoubt(new Comb(0.1, sigma), 20, 0, f -> density, f -> 0),
                undone,
                heard,
                260);
    }

    /**
     * Nine tenths come through where 4·sin² is more than nine times 1e-4, so |sin| over 0.015: all
     * but 0.0477 Hz to either side of a zero, in steps of 1/(4 · 20 s) = 0.0125 Hz whose middle
     * counts, so 0.05 Hz.
     */
    @Test
    void allButTheNeighbourhoodOfZerosIsRecovered() {
        List<RateBand> bands = of(0, f -> EVEN, 0, 250).bands();
        assertEquals(20, bands.size());
        for (int k = 0; k < 20; k++) {
            assertEquals(10 * k + 0.05, bands.get(k).fromHz(), 1e-9);
            assertEquals(10 * k + 9.95, bands.get(k).toHz(), 1e-9);
        }
    }

    @Test
    void nothingIsRecoveredBeyondTheTonesBand() {
        List<RateBand> bands = of(0, f -> EVEN, 0, 35).bands();
        assertEquals(4, bands.size());
        assertEquals(35, bands.get(3).toHz(), 1e-9);
    }

    @Test
    void ratesInsideTheBandsAreHeld() {
        Recovery recovery = of(0, f -> EVEN, 0, 250);
        assertTrue(recovery.holds(5));
        assertTrue(recovery.holds(0.0501));
        assertTrue(recovery.holds(9.9499));
        assertTrue(recovery.holds(199.9));
        assertFalse(recovery.holds(0));
        assertFalse(recovery.holds(0.0499));
        assertFalse(recovery.holds(9.9501));
        assertFalse(recovery.holds(10));
        assertFalse(recovery.holds(200));
        assertFalse(recovery.holds(205));
        assertFalse(recovery.holds(-5));
    }

    /**
     * With a delay known to 0.1 ms, (2π·f·σ)² = 1.58e-2 at 200 Hz: |sin| must exceed 1.5·√(1e-4 +
     * 1.55e-2) = 0.187 beside 190 and 200 Hz, which is 0.60 Hz away; beside 10 Hz, where 3.9e-5 is
     * added, 0.056 Hz.
     */
    @Test
    void anUncertainDelayWidensTheFastGaps() {
        List<RateBand> bands = of(1e-4, f -> EVEN, 0, 250).bands();
        assertEquals(20, bands.size());
        assertEquals(0.0566, bands.get(1).fromHz() - 10, 0.00626);
        assertEquals(0.574, bands.get(19).fromHz() - 190, 0.01);
        assertEquals(0.601, 200 - bands.get(19).toHz(), 0.01);
    }

    /**
     * Noise of a hundredth of the motion: |sin| over 1.5·√(1e-4 + 0.01) = 0.151, 0.482 Hz. Where
     * the transport is still the noise counts against a line of 0.001 %, which has a density of
     * 0.001²/2 · 20 s = 1e-5.
     */
    @Test
    void noiseWidensAllGaps() {
        double halfGap = 0.482;
        assertEquals(
                10 + halfGap, of(0, f -> EVEN, EVEN / 100, 250).bands().get(1).fromHz(), 0.0063);
        assertEquals(10 + halfGap, of(0, f -> 1e-300, 1e-7, 250).bands().get(1).fromHz(), 0.0063);
    }

    /** Nothing gets through noise of ten times the motion. */
    @Test
    void thereMayBeNoBandAtAll() {
        Recovery recovery = of(0, f -> EVEN, 10 * EVEN, 250);
        assertEquals(List.of(), recovery.bands());
        assertEquals(0, recovery.of(FlutterBand.WEIGHTED).share(), 0);
    }

    /** Integral of the square of a band's gain. */
    private static double powerGain(FlutterBand band, double fromHz, double toHz) {
        int steps = 2000;
        double width = (toHz - fromHz) / steps;
        double sum = 0;
        for (int i = 0; i < steps; i++) {
            sum += width * Math.pow(band.gain(fromHz + (i + 0.5) * width), 2);
        }
        return sum;
    }

    /**
     * Of white motion e/(4·sin² + e) is lost, √(e/(4 + e)) = 0.005 on average over the comb's 10
     * Hz, nearly all of it beside its zeros, where each band has the gain that it has there. The
     * mean square scatters by what of the rest is not seen: 1 − g², g = 4·sin²/(4·sin² + e), is
     * ¾·√e = 0.0075 on average; and the density under the zeros may be out by three tenths.
     */
    @Test
    void whiteMotionLacksWhatLiesUnderTheZeros() {
        Recovery.Lack lack = of(0, f -> EVEN, 0, 300).of(FlutterBand.UNWEIGHTED);
        double squares = 0;
        double fourths = 0;
        for (int hz = 10; hz < 260; hz += 10) {
            squares += Math.pow(FlutterBand.UNWEIGHTED.gain(hz), 2);
            fourths += Math.pow(FlutterBand.UNWEIGHTED.gain(hz), 4);
        }
        double lost = EVEN * 0.005 * 10 * squares;
        assertEquals(lost, lack.lost(), 0.01 * lost);
        double scatter = EVEN * EVEN * 0.0075 * 10 * fourths / 20;
        double deviation = Math.hypot(Math.sqrt(scatter), 0.3 * lost);
        assertEquals(deviation, lack.deviation(), 0.01 * deviation);
        assertEquals(0, lack.byDelay(), 0);
    }

    /** Between 10k ± 0.05 Hz nothing counts as recovered, nor beyond 200 Hz. */
    @Test
    void theShareIsThatOfTheRecoveredBands() {
        double inside = 0;
        for (int k = 0; k < 20; k++) {
            inside += powerGain(FlutterBand.FLUTTER, 10 * k + 0.05, 10 * k + 9.95);
        }
        double whole = powerGain(FlutterBand.FLUTTER, 0, 260);
        assertEquals(
                inside / whole, of(0, f -> EVEN, 0, 300).of(FlutterBand.FLUTTER).share(), 1e-4);
    }

    /** A still transport lacks nothing. */
    @Test
    void nothingIsWhole() {
        Recovery.Lack lack = of(0, f -> 0, 1e-12, 250).of(FlutterBand.UNWEIGHTED);
        assertEquals(1, lack.share(), 0);
        assertEquals(0, lack.lost(), 0);
        assertEquals(0, lack.deviation(), 0);
    }

    /**
     * A line of 0.1 % at 2.5 Hz has the power 0.005, whose logarithm changes by 2π·f·cot(π/4) =
     * 15.708 a second of delay. A second one at 7.5 Hz, where the cotangent is −1, takes as much
     * off if it has a third of the power.
     */
    @Test
    void linesMoveWithTheDelay() {
        double sigma = 1e-4;
        UndoneLine low = undone(2.5, 0.1);
        UndoneLine high = undone(7.5, 0.1 / Math.sqrt(3));
        assertEquals(
                0.005 * 15.708 * sigma,
                withLines(sigma, 1e-30, List.of(low), List.of(low.heard()))
                        .of(FlutterBand.UNWEIGHTED)
                        .byDelay(),
                1e-3 * 0.005 * 15.708 * sigma);
        assertEquals(
                0.005 * 15.708 * sigma,
                withLines(sigma, 1e-30, List.of(high), List.of(high.heard()))
                        .of(FlutterBand.UNWEIGHTED)
                        .byDelay(),
                1e-3 * 0.005 * 15.708 * sigma);
        assertEquals(
                0,
                withLines(sigma, 1e-30, List.of(low, high), List.of(low.heard(), high.heard()))
                        .of(FlutterBand.UNWEIGHTED)
                        .byDelay(),
                1e-3 * 0.005 * 15.708 * sigma);
    }

    /**
     * Weighted, the line counts by the square of the weighting, −0.9 dB at 6.3 Hz, where the slope
     * is 2π·6.3·|cot(0.63π)| = 17.13 1/s.
     */
    @Test
    void theWeightingCountsForLinesToo() {
        double sigma = 1e-4;
        UndoneLine line = undone(6.3, 0.1);
        double weight = Math.pow(FlutterBand.WEIGHTED.gain(6.3), 2);
        double expected = weight * 0.005 * 17.13 * sigma;
        assertEquals(
                expected,
                withLines(sigma, 1e-30, List.of(line), List.of(line.heard()))
                        .of(FlutterBand.WEIGHTED)
                        .byDelay(),
                2e-3 * expected);
    }

    /**
     * A line of 1e-4 % that is heard at a zero of the comb, 20 Hz, where only e = 1e-4 lets it
     * through, may have the power (1e-4)²/2/1e-4 = 5e-5; one of 0.01 % that was undone has as much.
     */
    @Test
    void aHiddenLineMayHoldPower() {
        UndoneLine seen = undone(5, 0.01);
        FoundLine hidden = line(20, 1e-4);
        Recovery.Lack lack =
                withLines(0, 1e-30, List.of(seen), List.of(seen.heard(), hidden))
                        .of(FlutterBand.UNWEIGHTED);
        assertEquals(0.5, lack.share(), 1e-4);
        assertEquals(
                1,
                withLines(0, 1e-30, List.of(seen), List.of(seen.heard()))
                        .of(FlutterBand.UNWEIGHTED)
                        .share(),
                1e-6);
    }
}
