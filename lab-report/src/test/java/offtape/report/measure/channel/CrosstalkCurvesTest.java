package offtape.report.measure.channel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.IntStream;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.result.CrosstalkCurve;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Crosstalk in third octaves from sweeps on one side alone, 10 dB over the sweep on both. */
class CrosstalkCurvesTest {

    private static final Cue[] BOTH_SIDES = {
        Pair.SILENCE, Pair.SWEEP, Pair.LEFT_SWEEP, Pair.RIGHT_SWEEP
    };

    private static List<CrosstalkCurve> curves(ProgrammeReturn ret, boolean swapped) {
        return new CrosstalkCurves(ret, Pair.follow(ret, Pair.SWEEP), Pair.noiseOf(ret), swapped)
                .measure();
    }

    /**
     * As in {@link CrosstalkMeasureTest}: 0.01 of 1 in a channel that returns 0.51 of its own
     * sweep, and 0.002 in one of 0.998, half a turn round. The lowest band lies a fifth over the
     * sweep's beginning, from 100 Hz on, the highest 11.2 kHz as far under its end.
     */
    @Test
    void bothWaysHaveTheirLevelAndPhaseAtAllFrequencies() {
        List<CrosstalkCurve> curves =
                curves(Pair.of(BOTH_SIDES).gains(1, 0.5).leaks(0.01, -0.004).play(), false);
        assertEquals(2, curves.size());
        assertEquals("left", curves.get(0).from());
        assertEquals("right", curves.get(0).into());
        assertEquals("right", curves.get(1).from());
        assertEquals("left", curves.get(1).into());
        for (int c = 0; c < 2; c++) {
            CrosstalkCurve curve = curves.get(c);
            double truth = 20 * Math.log10(c == 0 ? 0.01 / 0.51 : 0.002 / 0.998);
            int bands = curve.frequencyHz().length;
            assertEquals(21, bands);
            assertEquals(100, curve.frequencyHz()[0], 0.5);
            assertEquals(10_000, curve.frequencyHz()[bands - 1], 1);
            for (int i = 0; i < bands; i++) {
                assertEquals(truth, curve.crosstalkDb()[i], 0.1);
                assertEquals(0.1, curve.uncertaintyDb()[i], 0.01);
                assertEquals(c == 0 ? 0 : 180, Math.abs(curve.phaseDegrees()[i]), 1);
            }
        }
    }

    /** Two frames, 62.5 µs, are 0.0225° a hertz by which a late leak lags its source. */
    @Test
    void aLateLeakLags() {
        ProgrammeReturn ret = Pair.of(BOTH_SIDES).leaks(0.01, 0.01).leaksLate(2).late(3).play();
        for (CrosstalkCurve curve : curves(ret, false)) {
            for (int i = 0; i < curve.frequencyHz().length; i++) {
                double truth = -360e-6 * 2 * Pair.FRAME_US * curve.frequencyHz()[i];
                double off = Math.IEEEremainder(curve.phaseDegrees()[i] - truth, 360);
                assertEquals(0, off, 1 + 0.02 * Math.abs(truth));
            }
        }
    }

    /** Left of the recording is then what was sent right alone. */
    @Test
    void exchangedChannelsAreExchangedBack() {
        List<CrosstalkCurve> curves =
                curves(Pair.of(BOTH_SIDES).leaks(0.01, 0.002).swapped().play(), true);
        assertEquals("left", curves.get(0).from());
        assertEquals(20 * Math.log10(0.002), curves.get(0).crosstalkDb()[10], 0.1);
        assertEquals(20 * Math.log10(0.01), curves.get(1).crosstalkDb()[10], 0.1);
    }

    /**
     * What noise of a density d lets pass: over the four bands of a forty-eighth of an octave that
     * are added by phase, of a time T, it makes 2d/(A²·4T)·4/4 of a sweep of peak A. A leak of
     * sixteen times that can be told. With σ = 1e-3, d = 2σ²/rate, A = 10^(−28/20).
     */
    @Test
    void theFloorIsThatOfTheNoise() {
        double deviation = 1e-3;
        CrosstalkCurve curve =
                curves(Pair.of(BOTH_SIDES).leaks(0, 0.1).noise(deviation).play(), false).get(0);
        double density = 2 * deviation * deviation / Pair.RATE;
        double peak = Math.pow(10, -28 / 20.0);
        double seconds = 4 * Pair.SWEEP_S / (48 * Math.log(175) / Math.log(2));
        double floor = 10 * Math.log10(16 * 2 * density / (peak * peak * seconds));
        double mean =
                IntStream.range(10, curve.floorDb().length)
                        .mapToDouble(i -> curve.floorDb()[i])
                        .average()
                        .orElseThrow();
        assertEquals(floor, mean, 2);
        for (Double db : curve.crosstalkDb()) {
            assertNull(db);
        }
    }

    /** A leak four times over that floor is told within what it says of itself. */
    @Test
    void aLeakInNoiseIsToldWithItsDoubt() {
        CrosstalkCurve curve =
                curves(Pair.of(BOTH_SIDES).leaks(0.02, 0).noise(1e-3).play(), false).get(0);
        double truth = 20 * Math.log10(0.02 / 1.02);
        int within = 0;
        for (int i = 10; i < curve.frequencyHz().length; i++) {
            assertTrue(curve.uncertaintyDb()[i] > 0.1 && curve.uncertaintyDb()[i] < 3);
            within += Math.abs(curve.crosstalkDb()[i] - truth) < curve.uncertaintyDb()[i] ? 1 : 0;
        }
        // of eleven bands nearly all
        assertTrue(within >= 9, within + " of 11");
    }

    /** A channel that returns no sweep of its own has no zero to be told from. */
    @Test
    void withoutItsOwnSweepNothingIsTold() {
        CrosstalkCurve curve = curves(Pair.of(BOTH_SIDES).gains(1, 0).play(), false).get(0);
        for (int i = 0; i < curve.frequencyHz().length; i++) {
            assertNull(curve.crosstalkDb()[i]);
            // all of it may be leak
            assertEquals(0, curve.floorDb()[i], 1e-9);
        }
    }

    /**
     * The sweep on both channels begins at 40 or 160 Hz, that on one at 80: what both hold is told,
     * clear of their beginnings, which fade in for 0.1 s.
     */
    @ParameterizedTest
    @CsvSource({"40, 0", "160, 112"})
    void bandsAreSetAgainstThoseOfTheSameFrequency(double from, double untoldHz) {
        Cue.Sweep own = Pair.sweep("own", ChannelSet.BOTH, 1.7, from, 14_000, -20);
        ProgrammeReturn ret = Pair.of(own, Pair.LEFT_SWEEP).leaks(0.01, 0).play();
        CrosstalkCurve curve =
                new CrosstalkCurves(ret, Pair.follow(ret, own), null, false).measure().get(0);
        for (int i = 0; i < curve.frequencyHz().length; i++) {
            if (curve.frequencyHz()[i] > 300) {
                assertEquals(20 * Math.log10(0.01 / 1.01), curve.crosstalkDb()[i], 0.15);
            } else if (curve.frequencyHz()[i] < untoldHz) {
                assertNull(curve.crosstalkDb()[i]);
            }
        }
    }

    /** Only the side that sounded alone; none where no band of a sweep has room for its ends. */
    @ParameterizedTest
    @CsvSource({"500, 900, 1", "500, 700, 0", "13000, 14000, 0"})
    void aNarrowSweepTellsWhatItCan(double from, double to, int count) {
        Cue.Sweep right = Pair.sweep("side", ChannelSet.RIGHT, 3, from, to, -10);
        List<CrosstalkCurve> curves =
                curves(Pair.of(Pair.SWEEP, right).leaks(0, 0.01).play(), false);
        assertEquals(count, curves.size());
        if (count > 0) {
            assertEquals("right", curves.get(0).from());
            assertEquals(1, curves.get(0).frequencyHz().length);
            assertEquals(630, curves.get(0).frequencyHz()[0], 2);
        }
    }
}
