package offtape.report.measure.distortion;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import offtape.report.measure.tone.OrderSpectrum;
import offtape.report.result.LadderStep;
import offtape.report.result.StepNoise;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Tones whose lines are known one by one, and noise beside them that is known likewise. */
class StepReadingTest {

    private static final double PEAK = 0.2;

    /** Mean power of noise at a harmonic: −60 dB re the tone. */
    private static final double NOISE = PEAK * PEAK * 1e-6;

    private static LadderStep read(OrderSound sound) {
        OrderSpectrum orders = sound.spectrum();
        return StepReading.of(orders, orders, OrderSound.HZ, OrderSound.RATE, PEAK, 3);
    }

    /** A sound as it is made: noise of the given power is what the order spectrum reads. */
    @Test
    void theNoiseOfTheFixtureIsRead() {
        OrderSpectrum orders = OrderSound.tone(PEAK).line(3, 0.01).noise(3, NOISE).spectrum();
        assertEquals(PEAK * PEAK, orders.power(1), 1e-7);
        assertEquals(1e-4, orders.power(3), 1e-8);
        assertEquals(NOISE, orders.noise(3), 1e-4 * NOISE);
    }

    /**
     * K2, K3, … K10 of 0.5, 3, 0.2, 1, 0, 0, 0, 0 and 0.4 %: together √(0.25 + 9 + 0.04 + 1 + 0.16)
     * = 3.2326 %. What lies above the tenth is not counted.
     */
    @Test
    void harmonicsAreToldInPercentOfTheTone() {
        LadderStep step =
                read(
                        OrderSound.tone(PEAK)
                                .line(2, 0.005 * PEAK)
                                .line(3, 0.03 * PEAK)
                                .line(4, 0.002 * PEAK)
                                .line(5, 0.01 * PEAK)
                                .line(10, 0.004 * PEAK)
                                .line(11, 0.1 * PEAK));
        assertEquals(3, step.recordLevelDb());
        assertEquals(0, step.replayLevelDb(), 1e-4);
        assertEquals(0.5, step.k2Percent(), 1e-4);
        assertEquals(3, step.k3Percent(), 1e-4);
        assertEquals(3.2326, step.thdPercent(), 1e-4);
        assertNull(step.compressionDb());
        assertFalse(step.limitedByNoise());
        assertEquals(0.003, step.noise().k3UncertaintyPercent(), 1e-5, "a thousandth of K3");
    }

    /** The level is that of the tone alone, re the reference tone: half its peak is −6.02 dB. */
    @Test
    void theLevelIsReTheReferenceTone() {
        OrderSpectrum orders = OrderSound.tone(PEAK / 2).line(3, 0.3 * PEAK).spectrum();
        LadderStep step = StepReading.of(orders, orders, OrderSound.HZ, OrderSound.RATE, PEAK, -6);
        assertEquals(-6.0206, step.replayLevelDb(), 1e-4);
    }

    /**
     * Noise of 1/1000 of the tone's power beside it is taken out of its level: 10·lg 0.999 =
     * −0.00435 dB. A harmonic is re the tone without it: 1/√0.999.
     */
    @Test
    void noiseIsTakenOutOfTheTone() {
        LadderStep step =
                read(
                        OrderSound.tone(PEAK)
                                .noise(1, PEAK * PEAK / 1000)
                                .line(2, 0.01 * PEAK)
                                .line(3, 0.03 * PEAK));
        assertEquals(-0.00435, step.replayLevelDb(), 2e-4);
        assertEquals(1 / Math.sqrt(0.999), step.k2Percent(), 1e-4);
    }

    /**
     * A level that swings by 2 % three times in the stretch: two lines of 1 % of the tone's
     * amplitude three lines off, which Hann's window spreads by a half to their neighbours. Of the
     * eight lines two to five off these have (1 + ¼ + ¼)·2 = 3 times 10⁻⁴ of its power, a mean of
     * 3.75·10⁻⁵; in phase with the tone is half of it.
     */
    @Test
    void aLevelThatSwingsIsUncertain() {
        LadderStep step = read(OrderSound.tone(PEAK).beside(1, 3, 0.01 * PEAK));
        double expected = 2 * 20 * Math.log10(1 + Math.sqrt(3.75e-5 / 2));
        assertEquals(expected, step.noise().replayUncertaintyDb(), 1e-3 * expected);
    }

    /** The floor of noise 60 dB below the tone is 0.1 %, and K3 is told to √2 of it. */
    @Test
    void theFloorIsWhatNoiseWouldRead() {
        LadderStep step = read(OrderSound.tone(PEAK).line(3, 0.05 * PEAK).noise(3, NOISE));
        assertEquals(0.1, step.k3FloorPercent(), 1e-4);
        assertEquals(100 * Math.sqrt(0.0025 - 1e-6), step.k3Percent(), 1e-4);
        assertEquals(
                Math.hypot(0.1 * Math.sqrt(2), 0.005), step.noise().k3UncertaintyPercent(), 1e-4);
    }

    /**
     * Noise of mean power N beside a line of amplitude A moves it by 2·√(N/2)/A, k = 2, which is 1
     * % where A is 141 times √N.
     */
    @ParameterizedTest
    @CsvSource({"0.140, true", "0.143, false"})
    void noiseLimitsWhatItMovesByOnePercent(double k3, boolean limited) {
        LadderStep step = read(OrderSound.tone(PEAK).line(3, k3 * PEAK).noise(3, NOISE));
        assertEquals(limited, step.limitedByNoise());
    }

    /** Nothing under noise of −60 dB: no figure but a bound, over the noise but not by much. */
    @Test
    void whatTheNoiseHidesHasBounds() {
        OrderSound sound = OrderSound.tone(PEAK);
        for (int order = 2; order <= 10; order++) {
            sound.noise(order, NOISE);
        }
        LadderStep step = read(sound);
        assertNull(step.k2Percent());
        assertNull(step.k3Percent());
        assertNull(step.thdPercent());
        assertNull(step.noise().k3UncertaintyPercent());
        assertTrue(step.limitedByNoise());
        double bound = 100 * HarmonicReading.of(0, 1e-6, 1, 1).below();
        assertEquals(bound, step.noise().k2BelowPercent(), 1e-4);
        assertEquals(bound, step.noise().k3BelowPercent(), 1e-4);
        double nine = 100 * HarmonicReading.of(0, 1e-6, 9, 1).below();
        assertEquals(nine, step.noise().thdBelowPercent(), 1e-4);
    }

    /**
     * Nine lines of 2.5 times the noise, none of which stands out (that takes ln 20 = 2.996 times):
     * their sum of 22.5 does, since χ² of 18 degrees of freedom exceeds 28.87, 14.4 times the
     * noise, once in twenty. Noise taken out they have nine times 1.5 of it.
     */
    @Test
    void manyFaintLinesStandOutTogether() {
        OrderSound sound = OrderSound.tone(PEAK);
        for (int order = 2; order <= 10; order++) {
            sound.noise(order, NOISE).line(order, Math.sqrt(2.5 * NOISE));
        }
        LadderStep step = read(sound);
        assertNull(step.k2Percent());
        assertNull(step.k3Percent());
        assertEquals(0.1 * Math.sqrt(9 * 1.5), step.thdPercent(), 2e-4);
        assertNull(step.noise().thdBelowPercent());
    }

    /**
     * One line of 5 times the noise stands out by itself but not from the sum of nine, of which no
     * other shows anything: all together are no less than it, √4 of the noise.
     */
    @Test
    void allTogetherAreNoLessThanOneThatStandsOut() {
        OrderSound sound = OrderSound.tone(PEAK).line(2, Math.sqrt(5 * NOISE));
        for (int order = 2; order <= 10; order++) {
            sound.noise(order, NOISE);
        }
        LadderStep step = read(sound);
        assertEquals(0.2, step.k2Percent(), 2e-4);
        assertEquals(0.2, step.thdPercent(), 2e-4);
    }

    /**
     * Two lines stand out, of 10 and 5 times the noise, the others show 1 of it: the sum less its
     * noise is 9 + 4 + 0 times it.
     */
    @Test
    void allTogetherAreTheSumLessItsNoise() {
        OrderSound sound = OrderSound.tone(PEAK);
        for (int order = 2; order <= 10; order++) {
            double times = order == 2 ? 10 : order == 3 ? 5 : 1;
            sound.noise(order, NOISE).line(order, Math.sqrt(times * NOISE));
        }
        assertEquals(0.1 * Math.sqrt(13), read(sound).thdPercent(), 2e-4);
    }

    /** Harmonics count up to 0.45 of the sample rate, 19.845 kHz: which order lies there. */
    @ParameterizedTest
    @CsvSource({"6615, 3", "6616, 2", "9922.5, 2", "9923, 1"})
    void harmonicsAboveTheBandAreNotTold(double hz, int highest) {
        OrderSpectrum orders =
                OrderSound.tone(hz, PEAK).line(2, 0.1 * PEAK).line(3, 0.1 * PEAK).spectrum();
        LadderStep step = StepReading.of(orders, orders, hz, OrderSound.RATE, PEAK, 0);
        assertEquals(highest >= 2, step.k2Percent() != null);
        assertEquals(highest >= 3, step.k3Percent() != null);
        assertEquals(highest >= 3, step.thdPercent() != null);
        assertEquals(highest >= 3, step.k3FloorPercent() != null);
        assertEquals(highest < 3, step.limitedByNoise());
        assertNull(step.noise().k2BelowPercent());
    }

    /** At 48 kHz 0.45 of the rate would be 21.6 kHz, but nothing is read above 20 kHz. */
    @Test
    void nothingIsReadAboveTwentyKilohertz() {
        OrderSpectrum orders = OrderSound.tone(7000, PEAK).spectrum();
        assertNull(StepReading.of(orders, orders, 7000, 48_000, PEAK, 0).k3FloorPercent());
    }

    @Test
    void aToneThatIsMissingIsNotHeard() {
        LadderStep missing = StepReading.of(null, null, OrderSound.HZ, OrderSound.RATE, PEAK, -20);
        assertEquals(-20, missing.recordLevelDb());
        assertNull(missing.replayLevelDb());
        assertNull(missing.k3FloorPercent());
        assertTrue(missing.limitedByNoise());
        assertEquals(StepNoise.NOT_HEARD, missing.noise());
    }

    /** A tone is heard from ten times the noise beside it, its own noise taken out: eleven. */
    @ParameterizedTest
    @CsvSource({"10.9, false", "11.1, true"})
    void aToneIsHeardFromTenTimesTheNoise(double times, boolean heard) {
        OrderSpectrum loud = OrderSound.tone(PEAK).noise(1, PEAK * PEAK / 1000).spectrum();
        OrderSpectrum faint = OrderSound.faded(loud, times / 1000);
        LadderStep step = StepReading.of(faint, faint, OrderSound.HZ, OrderSound.RATE, PEAK, 0);
        assertEquals(heard, step.replayLevelDb() != null);
    }

    /**
     * A channel that returns nothing but what leaks in of the other one: when that is taken out no
     * tone is left whose harmonics could be told.
     */
    @Test
    void whatLeaksInIsNotTheTone() {
        OrderSpectrum leak = OrderSound.tone(PEAK).noise(1, PEAK * PEAK / 1000).spectrum();
        OrderSpectrum own = OrderSound.faded(leak, 0.0005);
        LadderStep step = StepReading.of(leak, own, OrderSound.HZ, OrderSound.RATE, PEAK, 0);
        assertNull(step.replayLevelDb());
        assertNull(step.k3Percent());
        assertEquals(StepNoise.NOT_HEARD, step.noise());
    }
}
