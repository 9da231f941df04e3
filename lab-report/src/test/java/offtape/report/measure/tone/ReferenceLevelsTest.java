package offtape.report.measure.tone;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.report.locate.ProgrammeReturn;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReferenceLevelsTest {

    private static final int RATE = Returns.RATE;

    private static double[] sine(double seconds, double hz, double peak, double phase) {
        return Returns.sound(seconds, t -> peak * Math.sin(2 * Math.PI * hz * t + phase));
    }

    private static Optional<ReferenceLevels> measured(Cue... cues) {
        return ReferenceLevels.measure(Returns.of(List.of(cues), sine(6, 1000, 0.1, 0)));
    }

    private static Cue.Tone chosen(Cue... cues) {
        ProgrammeReturn ret = Returns.of(List.of(cues), sine(6, 1000, 0.1, 0));
        return ReferenceLevels.wanted(ret).orElseThrow();
    }

    @Test
    void theToneNearestToReferenceLevelIsTaken() {
        Cue.Tone low = Returns.tone(0, 1, 1000, -10);
        Cue.Tone near = Returns.tone(1, 1, 400, 3);
        Cue.Tone far = Returns.tone(2, 1, 1000, 4);
        assertEquals(near, chosen(low, near, far));
    }

    /** As octaves go: 700 Hz is 0.51 octaves from 1 kHz, 1400 Hz 0.49, though 400 Hz away. */
    @Test
    void ofThoseTheOneNearestToOneKilohertz() {
        Cue.Tone below = Returns.tone(0, 2, 700, 0);
        Cue.Tone above = Returns.tone(2, 1, 1400, 0);
        assertEquals(above, chosen(below, above));
    }

    @Test
    void ofThoseTheLongest() {
        Cue.Tone brief = Returns.tone(0, 1, 1000, 0);
        Cue.Tone lasting = Returns.tone(1, 2, 1000, 0);
        Cue.Tone middling = Returns.tone(3, 1.5, 1000, 0);
        assertEquals(lasting, chosen(brief, lasting, middling));
    }

    /** Only tones on both channels, from 200 Hz to 2 kHz. */
    @ParameterizedTest
    @CsvSource({
        "BOTH, 200, true",
        "BOTH, 199, false",
        "BOTH, 2000, true",
        "BOTH, 2001, false",
        "LEFT, 1000, false",
        "RIGHT, 1000, false"
    })
    void notEveryToneWillDo(ChannelSet channels, double hz, boolean taken) {
        Cue cue = new Cue.Tone("tone", channels, 0, RATE, hz, 0);
        assertEquals(taken, measured(cue).isPresent());
        Cue.Tone other = Returns.tone(1, 1, 1000, -15);
        assertEquals(taken ? cue : other, chosen(cue, other));
    }

    @Test
    void aStepOfALadderIsAToneToo() {
        Cue.Ladder ladder =
                new Cue.Ladder(
                        "ladder",
                        ChannelSet.BOTH,
                        RATE,
                        3L * RATE,
                        1000,
                        List.of(
                                new Cue.Step(RATE, RATE, -5),
                                new Cue.Step(2L * RATE, RATE, 1),
                                new Cue.Step(3L * RATE, RATE, 7)));
        Cue.Tone step = new Cue.Tone("ladder", ChannelSet.BOTH, 2L * RATE, RATE, 1000, 1);
        assertEquals(step, chosen(Returns.tone(0, 1, 1000, -2), ladder));
        assertEquals(3, ReferenceLevels.steps(ladder).count());
    }

    /** A tone sent at −6 dB that returns with a peak of 0.1: reference level is 0.1·10^(6/20). */
    @Test
    void thePeakIsThatOfReferenceLevel() {
        ReferenceLevels levels = measured(Returns.tone(1, 2, 1000, -6)).orElseThrow();
        double peak = 0.1 * Math.pow(10, 0.3);
        assertEquals(peak, levels.peaks()[0], 1e-5 * peak);
        assertEquals(peak * peak / 2, levels.power(0), 2e-5 * peak * peak);
        assertTrue(levels.heard(0));
        assertEquals(-1, levels.deadChannel(), "there is no other");
        assertEquals(Complex.ZERO, levels.rightOverLeft());
    }

    private static ReferenceLevels pair(double[] left, double[] right) {
        List<Cue> cues = List.of(Returns.tone(0, 2, 1000, 0));
        return ReferenceLevels.measure(Returns.of(cues, left, right)).orElseThrow();
    }

    /** The right channel at half the level and 0.3 rad ahead. */
    @Test
    void channelsAreSetAgainstEachOther() {
        ReferenceLevels levels = pair(sine(2, 1000, 0.2, 0), sine(2, 1000, 0.1, 0.3));
        assertEquals(0.2, levels.peaks()[0], 1e-5);
        assertEquals(0.1, levels.peaks()[1], 1e-5);
        assertEquals(0.5 * Math.cos(0.3), levels.rightOverLeft().re(), 1e-4);
        assertEquals(0.5 * Math.sin(0.3), levels.rightOverLeft().im(), 1e-4);
        assertEquals(-1, levels.deadChannel());
    }

    /** −30 dB, 0.0316: what is weaker beside the other channel is its crosstalk. */
    @ParameterizedTest
    @CsvSource({"0.0320, true", "0.0312, false"})
    void crosstalkIsNoTone(double share, boolean heard) {
        double[] loud = sine(2, 1000, 0.2, 0);
        double[] weak = sine(2, 1000, 0.2 * share, 0);
        ReferenceLevels right = pair(loud, weak);
        assertEquals(heard, right.heard(1));
        assertTrue(right.heard(0));
        assertEquals(heard ? -1 : 1, right.deadChannel());
        assertEquals(heard ? share : 0, right.rightOverLeft().size(), 1e-4);
        ReferenceLevels left = pair(weak, loud);
        assertEquals(heard, left.heard(0));
        assertEquals(heard ? -1 : 0, left.deadChannel());
    }

    /**
     * White noise of variance σ² puts a squared peak of 6σ²/(fs·T) on a line (OrderSpectrumTest). A
     * tone of less than 30 times that is not heard beside a loud one; 90 times that is heard, and
     * its peak is off by √(1/(2·90)) = 7.5 %.
     */
    @ParameterizedTest
    @CsvSource({"10, false", "90, true"})
    void aToneUnderNoiseIsNotHeard(double ratio, boolean heard) {
        double sigma = 0.01 * Math.sqrt(RATE * 1.88 / 6 / ratio);
        Random random = new Random(3);
        double[] noisy =
                Returns.sound(
                        2,
                        t ->
                                0.01 * Math.sin(2 * Math.PI * 1000 * t)
                                        + sigma * random.nextGaussian());
        ReferenceLevels levels = pair(sine(2, 1000, 0.2, 0), noisy);
        assertTrue(levels.heard(0));
        assertEquals(heard, levels.heard(1));
        assertEquals(heard ? 0.01 : 0, levels.peaks()[1], heard ? 2 * 0.00075 : 0);
    }

    /**
     * Noise of a squared peak N on the line moves the peak A by √(N/2), so √(N/2)/A of it; the
     * medians of sixty-eight lines tell N within 17 %.
     */
    @Test
    void noiseIsToldAsUncertainty() {
        Random random = new Random(4);
        double[] x =
                Returns.sound(
                        2,
                        t -> 0.5 * Math.sin(2 * Math.PI * 1000 * t) + 0.01 * random.nextGaussian());
        List<Cue> cues = List.of(Returns.tone(0, 2, 1000, 0));
        ReferenceLevels levels = ReferenceLevels.measure(Returns.of(cues, x)).orElseThrow();
        double expected = Math.sqrt(6 * 0.01 * 0.01 / (RATE * 1.88) / 2) / 0.5;
        assertEquals(expected, levels.relativeUncertainty()[0], 0.35 * expected);
    }

    /**
     * Sound was off while the reference tone played: the next best tells the level, 20 dB lower.
     */
    @Test
    void whereTheReferenceIsNotHeardAnotherTellsTheLevel() {
        Random random = new Random(5);
        double[] x =
                Returns.sound(
                        4,
                        t ->
                                1e-4 * random.nextGaussian()
                                        + (t < 2 ? 0 : 0.02 * Math.sin(2 * Math.PI * 1000 * t)));
        Cue.Tone first = Returns.tone(0, 2, 1000, 0);
        Cue.Tone second = Returns.tone(2, 2, 1000, -20);
        ProgrammeReturn ret = Returns.of(List.of(first, second), x, x);
        assertEquals(first, ReferenceLevels.wanted(ret).orElseThrow());
        ReferenceLevels levels = ReferenceLevels.measure(ret).orElseThrow();
        assertEquals(second, levels.cue());
        assertEquals(0.2, levels.peaks()[1], 1e-3);
    }

    /** Where no tone is heard there is none to tell of. */
    @Test
    void noToneAtAllIsHeardOnNoChannel() {
        Random random = new Random(6);
        double[] hiss = Returns.sound(4, t -> 1e-3 * random.nextGaussian());
        Cue.Tone first = Returns.tone(0, 2, 1000, 0);
        List<Cue> cues = List.of(Returns.tone(2, 2, 1000, -20), first);
        ReferenceLevels levels =
                ReferenceLevels.measure(Returns.of(cues, hiss, hiss)).orElseThrow();
        assertEquals(first, levels.cue());
        assertFalse(levels.heard(0) || levels.heard(1));
        assertEquals(-1, levels.deadChannel());
    }

    @Test
    void aProgrammeWithoutAToneHasNoReference() {
        assertFalse(measured(new Cue.Silence("silence", ChannelSet.BOTH, 0, RATE)).isPresent());
        assertFalse(measured().isPresent());
    }
}
