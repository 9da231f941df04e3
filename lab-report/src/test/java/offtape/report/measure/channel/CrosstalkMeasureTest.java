package offtape.report.measure.channel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.unit.Quantity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Leaks of known size, both ways. */
class CrosstalkMeasureTest {

    private static final Cue[] TONES = {Pair.REFERENCE, Pair.LEFT_TONE, Pair.RIGHT_TONE};
    private static final Cue[] SWEEPS = {Pair.REFERENCE, Pair.LEFT_SWEEP, Pair.RIGHT_SWEEP};

    /**
     * A hundredth of the left channel in the right one, which is half as loud: 0.01/0.5, −33.98 dB.
     * Of the right one −0.004 in the left one, 0.5 · 0.004 re 1: −53.98 dB, half a turn round. With
     * the leaks themselves the references are 0.51 and 0.998: 33.98 + 0.17 and 53.98 − 0.02.
     */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void bothWaysHaveTheirLevelAndPhase(boolean tones) {
        CrosstalkMeasure found =
                Pair.crosstalk(
                        Pair.of(tones ? TONES : SWEEPS).gains(1, 0.5).leaks(0.01, -0.004).play());
        double within = tones ? 0.005 : 0.05;
        assertEquals(20 * Math.log10(0.01 / 0.51), found.leftToRight().value(), within);
        assertEquals(20 * Math.log10(0.002 / 0.998), found.rightToLeft().value(), within);
        assertEquals(within, found.leftToRight().uncertainty(), 0.1 * within);
        assertEquals("dB", found.leftToRight().unit());
        assertEquals(0, found.leftToRightPhase(), 0.5);
        assertEquals(180, Math.abs(found.rightToLeftPhase()), 0.5);
        assertTrue(found.looked());
        assertFalse(found.swapped());
        assertEquals(0.01, found.leakage().into(1, 1000).re(), 1e-4);
        assertEquals(-0.004, found.leakage().into(0, 1000).re(), 1e-4);
    }

    /**
     * Each side returns on the other channel; what is sent left alone is right in the recording.
     */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void exchangedChannelsAreSeen(boolean tones) {
        CrosstalkMeasure found =
                Pair.crosstalk(Pair.of(tones ? TONES : SWEEPS).leaks(0.01, 0.003).swapped().play());
        assertTrue(found.swapped());
        // left of the recording is what was sent right
        double within = tones ? 0.005 : 0.05;
        assertEquals(20 * Math.log10(0.003 / 1.003), found.leftToRight().value(), within);
        assertEquals(20 * Math.log10(0.01 / 1.01), found.rightToLeft().value(), within);
    }

    /** One side alone that is louder on the other channel is no exchange, nor is it a leak. */
    @Test
    void aWiringFaultIsNoLeakToBeTakenOut() {
        CrosstalkMeasure found = Pair.crosstalk(Pair.of(TONES).leaks(1.5, 0.002).play());
        assertFalse(found.swapped());
        assertEquals(0, found.leakage().into(1, 1000).size());
        assertEquals(0.002, found.leakage().into(0, 1000).size(), 1e-5);
        assertTrue(found.leftToRight().isKnown());
    }

    /** A ratio of a half and more is a matter of wiring. */
    @ParameterizedTest
    @CsvSource({"0.49, true", "0.51, false"})
    void halfIsNoLeak(double ratio, boolean leak) {
        CrosstalkMeasure found = Pair.crosstalk(Pair.of(TONES).leaks(ratio, 0).play());
        assertEquals(leak, found.leakage().into(1, 1000).size() > 0);
    }

    /**
     * White noise of a deviation σ shows a line of squared peak 4σ²/n · 1.5 on average, by Hann's
     * window over n values; six times that is the least that is told. 1000 cycles of the tone in
     * 0.28 s (0.4 s less 60 ms at both ends) are 280 in 8960 values: of 1e-3 6.7e-10 or −91.7 dB;
     * six times that is −84 dB, and the reference of −18 dB makes it −66.
     */
    @ParameterizedTest
    @CsvSource({"0, false", "3e-4, false", "2e-3, true"})
    void aLeakStandsOutOfTheNoise(double ratio, boolean told) {
        CrosstalkMeasure found = Pair.crosstalk(Pair.of(TONES).leaks(ratio, 0).noise(1e-3).play());
        assertEquals(told, found.leftToRight().isKnown(), () -> found.leftToRight().toString());
        if (told) {
            assertEquals(
                    20 * Math.log10(ratio),
                    found.leftToRight().value(),
                    found.leftToRight().uncertainty());
        } else {
            String reason = found.leftToRight().reason();
            double limit = Double.parseDouble(reason.replaceAll(".*less than (-?\\d+) dB.*", "$1"));
            assertEquals(-66, limit, 2);
            assertNull(found.leftToRightPhase());
            assertEquals(0, found.leakage().into(1, 1000).size());
        }
    }

    /** With its level told within √(2N/P) of an amplitude, k = 2: 8.686 · that in decibels. */
    @Test
    void noiseIsDoubtOfALeak() {
        Quantity q = Pair.crosstalk(Pair.of(TONES).leaks(5e-3, 0).noise(1e-3).play()).leftToRight();
        double noise = 6.7e-10;
        double power = Math.pow(10, -18 / 10.0) * 5e-3 * 5e-3;
        double doubt = 8.686 * Math.sqrt(2 * noise / power);
        assertEquals(doubt, q.uncertainty(), 0.35 * doubt);
        assertEquals(20 * Math.log10(5e-3), q.value(), q.uncertainty());
    }

    /**
     * Noise alone keeps step by chance: in a sweep as short as that, of some two values, most of
     * it.
     */
    @ParameterizedTest
    @ValueSource(doubles = {1e-4, 1e-3})
    void noiseInAShortSweepIsNoLeak(double noise) {
        Quantity none = Pair.crosstalk(Pair.of(SWEEPS).noise(noise).play()).leftToRight();
        assertEquals("The leak stays under the noise of the recording.", none.reason());
    }

    /**
     * Two octaves in a second: bands of T = 10.4 ms, nine of them around 1 kHz. Noise of the
     * density d = 2σ²/rate makes √(4d/(A²·r²·9T)) of the amplitude of a leak of ratio r, k = 2,
     * which the few values tell only roughly; the sweep's peak A is 10^(−28/20).
     */
    @ParameterizedTest
    @CsvSource({"0.02, 1", "0.02, 3"})
    void aLeakOfASweepIsToldWithItsDoubt(double ratio, double thousandths) {
        double deviation = 1e-3 * thousandths;
        Cue.Sweep sweep = Pair.sweep("side", ChannelSet.LEFT, 2, 500, 2000, -10);
        Quantity q =
                Pair.crosstalk(
                                Pair.of(Pair.REFERENCE, sweep)
                                        .leaks(ratio, 0)
                                        .noise(deviation)
                                        .play())
                        .leftToRight();
        double density = 2 * deviation * deviation / Pair.RATE;
        double peak = Math.pow(10, -28 / 20.0) * ratio;
        double doubt = 8.686 * Math.sqrt(4 * density / (peak * peak * 9 * Pair.SWEEP_S / 96));
        assertEquals(Math.hypot(doubt, 0.05), q.uncertainty(), 0.5 * doubt);
        assertEquals(20 * Math.log10(ratio / (1 + ratio)), q.value(), q.uncertainty());
    }

    /** Of tones over 500 Hz and under 2 kHz the one nearest to 1 kHz tells, as a ratio. */
    @ParameterizedTest
    @CsvSource({"550, 1700, 1700", "700, 1900, 700"})
    void theToneNearestToOneKilohertzTells(double one, double other, double hz) {
        Cue[] cues = {
            Pair.REFERENCE,
            Pair.tone("a", ChannelSet.LEFT, 2.8, 0.4, one),
            Pair.tone("b", ChannelSet.LEFT, 3.3, 0.4, other)
        };
        CrosstalkMeasure found = Pair.crosstalk(Pair.of(cues).leaks(0.01, 0).play());
        assertTrue(found.leftToRight().isKnown());
        assertEquals(hz, found.leakage().toRight().frequencyHz());
    }

    /** The level it was sent with is taken out: 6 dB less makes a leak no weaker. */
    @ParameterizedTest
    @CsvSource({"500, false", "501, true", "1999, true", "2000, false"})
    void tonesFarFromOneKilohertzDoNot(double hz, boolean told) {
        Cue.Tone tone = new Cue.Tone("side", ChannelSet.LEFT, Pair.at(2), Pair.at(0.4), hz, -6);
        Quantity q =
                Pair.crosstalk(Pair.of(Pair.REFERENCE, tone).leaks(0.01, 0).play()).leftToRight();
        assertEquals(told, q.isKnown());
        if (told) {
            assertEquals(20 * Math.log10(0.01 / 1.01), q.value(), 0.01);
        }
    }

    /** Two frames of 31.25 µs later than its source a leak lags by 22.5° at 1 kHz, either way. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void aLateLeakLags(boolean tones) {
        Cue[] sweeps = {
            Pair.REFERENCE,
            Pair.sweep("l", ChannelSet.LEFT, 2, 500, 2000, -10),
            Pair.sweep("r", ChannelSet.RIGHT, 3.2, 500, 2000, -10)
        };
        CrosstalkMeasure found =
                Pair.crosstalk(
                        Pair.of(tones ? TONES : sweeps)
                                .leaks(0.01, 0.01)
                                .leaksLate(2)
                                .late(5)
                                .play());
        assertEquals(-22.5, found.leftToRightPhase(), 0.5);
        assertEquals(-22.5, found.rightToLeftPhase(), 0.5);
    }

    /** Digital silence on the channel that was to sound, both ways. */
    @Test
    void silentSourcesAreAnExchangeToo() {
        CrosstalkMeasure found = Pair.crosstalk(Pair.of(TONES).swapped().play());
        assertTrue(found.swapped());
        assertFalse(found.leftToRight().isKnown());
    }

    /** A recording that ends too early, at 3 s: not before the left tone but the right one. */
    @Test
    void whatWasCutOffIsSaid() {
        Pair pair = Pair.of(Pair.REFERENCE, Pair.RIGHT_TONE);
        CrosstalkMeasure cut = Pair.crosstalk(pair.playUntil(3));
        assertEquals(
                "The recording holds nothing near 1 kHz on the left channel alone.",
                cut.leftToRight().reason());
        assertTrue(cut.rightToLeft().reason().contains("right"), cut.rightToLeft().reason());
        assertFalse(cut.rightToLeft().reason().contains("nothing near"));
    }

    /** A sweep tells if it passes from under 800 Hz to over 1250. */
    @ParameterizedTest
    @CsvSource({"790, 1300, true", "810, 1300, false", "400, 1240, false"})
    void aSweepMustPassOneKilohertz(double from, double to, boolean told) {
        Cue.Sweep sweep = Pair.sweep("side", ChannelSet.LEFT, 2, from, to, -10);
        CrosstalkMeasure found =
                Pair.crosstalk(Pair.of(Pair.REFERENCE, sweep).leaks(0.01, 0).play());
        assertEquals(told, found.leftToRight().isKnown());
    }

    @Test
    void whatIsMissingIsSaid() {
        CrosstalkMeasure none = Pair.crosstalk(Pair.of(Pair.REFERENCE).play());
        assertEquals(
                "The recording holds nothing near 1 kHz on the left channel alone.",
                none.leftToRight().reason());
        assertEquals(
                "The recording holds nothing near 1 kHz on the right channel alone.",
                none.rightToLeft().reason());
        assertFalse(none.looked());
        String noReference = "The reference tone was not heard on both channels.";
        assertEquals(
                noReference, Pair.crosstalk(Pair.of(Pair.LEFT_TONE).play()).leftToRight().reason());
        assertEquals(
                noReference,
                Pair.crosstalk(Pair.of(TONES).gains(1, 0).play()).leftToRight().reason());
        assertEquals(
                noReference,
                Pair.crosstalk(Pair.of(TONES).gains(0, 1).play()).leftToRight().reason());
        assertEquals(
                "The recording has one channel only.",
                Pair.crosstalk(Pair.of(TONES).playLeft()).leftToRight().reason());
        // a tone too short to be told
        Cue brief = Pair.tone("brief", ChannelSet.LEFT, 2, 0.13, 1000);
        assertEquals(
                "The tone on the left channel was not heard.",
                Pair.crosstalk(Pair.of(Pair.REFERENCE, brief).play()).leftToRight().reason());
    }

    /** Either a tone or a sweep on one side alone shows whether something leaks. */
    @Test
    void whatSoundsOnOneSideIsLookedAt() {
        assertTrue(Pair.crosstalk(Pair.of(Pair.REFERENCE, Pair.RIGHT_TONE).play()).looked());
        assertTrue(Pair.crosstalk(Pair.of(Pair.REFERENCE, Pair.RIGHT_SWEEP).play()).looked());
        assertFalse(Pair.crosstalk(Pair.of(Pair.REFERENCE, Pair.SWEEP).play()).looked());
    }
}
