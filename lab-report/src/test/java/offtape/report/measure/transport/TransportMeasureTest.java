package offtape.report.measure.transport;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import offtape.core.standard.Iec60386;
import offtape.core.unit.Quantity;
import offtape.reference.Source;
import offtape.report.measure.line.FoundLine;
import offtape.report.measure.speed.HeardDeviation;
import offtape.report.result.RateBand;
import offtape.report.result.SpeedComponent;
import offtape.report.result.TransportSpectrum;
import offtape.report.result.TransportSpeed;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

class TransportMeasureTest {

    private static final Iec60386 METER = Iec60386.atRate(500);

    private static final double DELAY_S = 0.157;

    /** Two lines: that of 3.2 Hz is heard louder, that of 6.1 Hz is the larger one. */
    private static TransportSpeed twoLines;

    @BeforeAll
    static void measureTwoLines() {
        twoLines =
                measured(
                        still(20).line(3.2, 0.05).line(6.1, 0.06).heard(DELAY_S, MadeReturn.HISS),
                        10e-6);
    }

    private static TransportSpeed measured(HeardDeviation heard, double sigma) {
        return TransportMeasure.of(
                METER,
                heard,
                DrawnTransport.lines(heard),
                new HeadDelay(DELAY_S, sigma, "Given.", null),
                Quantity.unknown("It cancels."),
                1e-6);
    }

    private static DrawnMotion still(double seconds) {
        return new DrawnMotion(seconds, 500, DELAY_S, 5);
    }

    /** Steady lines heard by heads so far apart, without noise, changes up to a band's end. */
    private static HeardDeviation lines(double seconds, double delay, double bandHz, double... hz) {
        double[] x = new double[(int) Math.round(500 * seconds)];
        List<FoundLine> found = new ArrayList<>();
        for (double f : hz) {
            for (int i = 0; i < x.length; i++) {
                double t = i / 500.0;
                x[i] +=
                        0.05 * Math.sin(2 * Math.PI * f * t)
                                - 0.05 * Math.sin(2 * Math.PI * f * (t - delay));
            }
            found.add(new FoundLine(f, f, 0.001, 0.05, 1e-5, 0, 0));
        }
        return new HeardDeviation(x, 500, bandHz, f -> 0, found);
    }

    private static TransportSpeed measured(HeardDeviation heard, HeadDelay delay) {
        return TransportMeasure.of(
                METER,
                heard,
                heard.lines().stream()
                        .map(l -> SpeedComponent.steady(l.startHz(), 0.1, "part", 0, 0))
                        .toList(),
                delay,
                Quantity.unknown("It cancels."),
                0);
    }

    /**
     * r = a·(sin ωt − sin ω(t − τ)) has the peak 2·a·|sin πfτ|: at 3.2 Hz and 157 ms 1.9999·a, at
     * 6.1 Hz 0.2674·a. Undone they must read 0.05 and 0.06 %, the larger one first, the rms of 0.2
     * to 200 Hz √(0.05²/2 + 0.06²/2) = 0.0552 %, and the weighted rms, −0.6 dB at 3.15 Hz and −0.9
     * dB at 6.3 Hz or nearly nothing, a little less.
     */
    @Test
    @Source("IEC 60386, weighting table; the rest derived here")
    void linesReadWhatTheTransportDoes() {
        double[] hz = {6.1, 3.2};
        double[] peak = {0.06, 0.05};
        assertEquals(2, twoLines.components().size());
        for (int k = 0; k < 2; k++) {
            SpeedComponent line = twoLines.components().get(k);
            assertEquals(hz[k], line.frequencyHz(), 0.002);
            assertEquals(peak[k], line.peakPercent(), line.peakUncertaintyPercent());
            assertTrue(line.peakUncertaintyPercent() < 0.05 * peak[k]);
        }
        assertEquals(0.05523, twoLines.unweightedRms().value(), 0.005 * 0.055);
        double weighted = twoLines.weightedRms().value();
        assertTrue(weighted < 0.0554 && weighted > 0.0492, weighted + " %");
        assertFalse(twoLines.deviation().isKnown());
    }

    /** 157 ms ± 2 · 0.01 ms; a constant of 1e-6 % may be a drift of 1e-6/0.157 · 20 s. */
    @Test
    void theDelayIsToldAndItsPartInTheDrift() {
        assertEquals(157, twoLines.headDelay().value(), 1e-12);
        assertEquals("ms", twoLines.headDelay().unit());
        assertEquals(0.02, twoLines.headDelay().uncertainty(), 1e-12);
        assertEquals("Given.", twoLines.delayFound());
        assertTrue(twoLines.drift().isKnown());
        double drift = twoLines.drift().value();
        assertEquals(
                0.1 * drift + 0.0005 + 1e-6 / DELAY_S * 20,
                twoLines.drift().uncertainty(),
                1e-3 * drift);
    }

    /**
     * Between zeros at 35.03 Hz, where the comb's power gain is 4, noise of N = 8e-11 ·
     * (100·35/3150)² %²/Hz lets a line of the peak √(2·N/4/20 s) appear; k = 2.
     */
    @Test
    void noiseMakesTheSpectrumUncertain() {
        double noise = MadeReturn.HISS * Math.pow(100 * 35.03 / 3150, 2);
        assertEquals(
                2 * Math.sqrt(2 * noise / 4 / 20),
                uncertainty(twoLines.spectrum(), 35.03),
                0.1 * 3.1e-6);
    }

    private static double uncertainty(TransportSpectrum spectrum, double hz) {
        return spectrum.uncertaintyPercent()[nearest(spectrum.frequencyHz(), hz)];
    }

    private static int nearest(double[] hz, double to) {
        return IntStream.range(0, hz.length)
                .boxed()
                .min(Comparator.comparingDouble(i -> Math.abs(hz[i] - to)))
                .orElseThrow();
    }

    /** Zeros at 6.369 Hz and its multiples, and at 0 Hz; everything else is there up to 200 Hz. */
    @Test
    void theRecoveredBandsLeaveOutTheZeros() {
        TransportSpeed own =
                measured(
                        still(30)
                                .noise(f -> f > 0.3 && f < 150 ? 1e-5 : 0)
                                .heardWithoutLines(DELAY_S, MadeReturn.HISS),
                        20e-6);
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
        TransportSpeed own = measured(motion.heard(DELAY_S, MadeReturn.HISS), 8e-3);
        assertFalse(own.flutterRms().isKnown());
        assertTrue(own.flutterRms().reason().contains("shows only"), own.flutterRms().reason());
        assertTrue(own.wowRms().isKnown());
        assertTrue(own.wowRms().uncertainty() > 0.03 * own.wowRms().value());
    }

    /**
     * Heads 0.1 s apart, known to 0.2 ms, a tone of 5.6 s: e = (2 · 0.1/5.6)² = 1.276e-3. Nine
     * tenths come through where |sin π·f·τ| exceeds 1.5·√(e + (2π·f·σ)²): 0.0536 near 0 Hz, which
     * is 0.171 Hz, on the grid of 1/22.4 Hz 0.179; and 0.36 near 190 Hz, 1.18 Hz. A line at 10 Hz
     * is heard by both heads alike.
     */
    @Test
    void whatIsNotRecoveredIsToldInWords() {
        TransportSpeed own =
                measured(lines(5.6, 0.1, 199, 10, 5), new HeadDelay(0.1, 2e-4, "Given.", null));
        assertEquals(2, own.notes().size());
        Matcher words =
                Pattern.compile(
                                "Not recovered, because both heads hear them alike or the time between"
                                        + " them is not known well enough: changes slower than 0\\.179"
                                        + " Hz, those within (.*) Hz or less of a multiple of 10\\.000"
                                        + " Hz, and all above 199 Hz\\.")
                        .matcher(own.notes().get(0));
        assertTrue(words.matches(), own.notes().get(0));
        assertEquals(1.18, Double.parseDouble(words.group(1)), 0.05);
        assertTrue(own.notes().get(1).startsWith("The line at 10.00 Hz is nearly hidden"));
        assertEquals(
                List.of(5.0), own.components().stream().map(SpeedComponent::frequencyHz).toList());
        assertEquals("part", own.components().get(0).part());
        assertEquals(0.05, own.components().get(0).peakPercent(), 1e-4);
    }

    /** The delay known well: the gaps are alike, and the slowest rates are the widest of them. */
    @Test
    void aKnownDelayLeavesNarrowGaps() {
        TransportSpeed own =
                measured(lines(5.6, 0.1, 200, 5), new HeadDelay(0.1, 1e-7, "Given.", null));
        assertEquals(1, own.notes().size());
        assertTrue(
                own.notes()
                        .get(0)
                        .contains(
                                "slower than 0.179 Hz, those within 0.18 Hz or less of a multiple of"
                                        + " 10.000 Hz, and all above 200 Hz."),
                own.notes().get(0));
        // at 5 Hz e/(4 + e) of the power is not seen
        TransportSpectrum spectrum = own.spectrum();
        int k = nearest(spectrum.frequencyHz(), 5);
        double share = 1.2755e-3 / 4.0013;
        assertEquals(
                2 * Math.sqrt(share / (1.001 - share)),
                spectrum.uncertaintyPercent()[k] / spectrum.peakPercent()[k],
                1e-4);
        assertTrue(own.unweightedRms().isKnown() && own.unweightedPeak().isKnown());
        assertEquals(1.0, own.recoveredBands().get(0).toHz() / 9.82, 0.01);
        assertEquals(0, own.notRecoveredShare(), 1e-3);
    }

    /** A tone that shows changes up to 199.9 Hz only has no reading that needs 200 Hz. */
    @Test
    void aLowToneHasNoFastReadings() {
        TransportSpeed own =
                measured(lines(5.6, 0.7, 199.9, 1.9), new HeadDelay(0.7, 1e-7, "Given.", null));
        for (Quantity q :
                List.of(
                        own.unweightedPeak(),
                        own.unweightedRms(),
                        own.flutterRms(),
                        own.americanRms())) {
            assertEquals(
                    "This tone shows changes of speed up to 200 Hz only, and the reading needs 200"
                            + " Hz. Use a tone of 400 Hz or more.",
                    q.reason());
        }
        assertTrue(own.wowRms().isKnown() && own.weightedRms().isKnown());
        assertTrue(own.weightedPeak().isKnown() && own.weightedTwoSigma().isKnown());
        assertEquals("The tone is too short to tell drift from wow.", own.drift().reason());
    }

    /** Readings need 5 s, and eight times the delay: 5.6 s for 0.7 s. */
    @Test
    void shortTonesTellNothing() {
        HeadDelay delay = new HeadDelay(0.1, 1e-5, "Given.", null);
        assertEquals(
                "The tone is too short: wow and flutter needs 5 s or more.",
                measured(lines(3, 0.1, 200, 2), delay).weightedRms().reason());
        HeadDelay longer = new HeadDelay(0.7001, 1e-5, "Given.", null);
        TransportSpeed own = measured(lines(5.6, 0.7, 200, 2), longer);
        assertEquals(
                "The tone is too short against the time that the tape takes between the heads.",
                own.weightedRms().reason());
        assertEquals("It cancels.", own.deviation().reason());
    }
}
