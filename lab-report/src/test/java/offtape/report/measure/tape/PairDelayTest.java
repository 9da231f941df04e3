package offtape.report.measure.tape;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import offtape.core.unit.Quantity;
import org.junit.jupiter.api.Test;

/** Phases made up of a delay: −2πfτ, wrapped. */
class PairDelayTest {

    private static List<HeardTone> tones(double delayUs, double turn, double... hz) {
        return Arrays.stream(hz)
                .mapToObj(
                        f -> {
                            double phase =
                                    ToneReader.wrapped(-2 * Math.PI * f * 1e-6 * delayUs + turn);
                            return new HeardTone(
                                    0,
                                    3,
                                    f,
                                    0.01,
                                    List.of(),
                                    Quantity.unknown("not asked"),
                                    new HeardTone.Phase(phase, 0.002, 0, 0.001),
                                    0);
                        })
                .toList();
    }

    /** 160 µs are 1.6 periods of 10 kHz and 2.56 of 16 kHz. */
    @Test
    void lowTonesTellThePeriodOfHighOnes() {
        for (double delay : new double[] {-400, -160, 0, 3, 160, 400}) {
            List<HeardTone> tones = tones(delay, 0, 16_000, 63, 1000, 10_000, 4000);
            PairDelay pair = PairDelay.of(tones);
            assertEquals(delay, pair.delay().value(), 1e-6);
            for (HeardTone t : tones) {
                assertEquals(delay, pair.of(t).value(), 1e-6);
            }
        }
    }

    @Test
    void oppositePolarityIsToldFromDelay() {
        PairDelay pair = PairDelay.of(tones(25, Math.PI, 100, 1000, 10_000));
        assertTrue(pair.isInverted());
        assertEquals(25, pair.delay().value(), 1e-6);
    }

    /** 8 and 10 kHz agree every 1/(10 − 8) kHz = 500 µs: 100 µs and −400 µs. */
    @Test
    void whatStaysOpenIsSaid() {
        Quantity delay = PairDelay.of(tones(100, 0, 8000, 10_000)).delay();
        assertFalse(delay.isKnown());
        assertTrue(delay.reason().contains("100.0 µs and -400.0 µs"), delay.reason());
        assertEquals(
                "No tone was heard on both channels.", PairDelay.of(List.of()).delay().reason());
    }

    private static HeardTone tone(double hz, double radians, double standard) {
        return new HeardTone(
                0,
                3,
                hz,
                0.01,
                List.of(),
                Quantity.unknown("not asked"),
                new HeardTone.Phase(radians, standard, 0, 0.001),
                0);
    }

    /**
     * A phase of 0.1 rad at 1 kHz is 15.9 µs. Of a tone alone half a quarter of a period either way
     * is no other delay (450 µs at most): the amplifiers' 0.105 rad and noise of 0.14 rad make
     * 0.175 rad, 27.9 µs, and twice that for k = 2.
     */
    @Test
    void theUncertaintyHoldsAmplifiersAndNoise() {
        PairDelay pair = PairDelay.of(List.of(tone(1000, -0.1, 0.14)));
        assertEquals(1e6 * 0.1 / (2 * Math.PI * 1000), pair.delay().value(), 1e-6);
        assertEquals(
                2e6 * Math.hypot(0.14, 0.105) / (2 * Math.PI * 1000),
                pair.delay().uncertainty(),
                1e-6);
        assertEquals("µs", pair.delay().unit());
        assertEquals(1e-6 * pair.delay().value(), pair.seconds(), 1e-15);
        // of itself the tone says no more than its noise
        HeardTone same = tone(1000, -0.1, 0.14);
        assertEquals(2e6 * 0.14 / (2 * Math.PI * 1000), pair.of(same).uncertainty(), 1e-6);
        assertEquals("µs", pair.of(same).unit());
    }

    /**
     * Weighted mean: the phases of 500 Hz and 1 kHz mean 20 and 30 µs. With like standard
     * deviations the weights go with the squared frequency, 1 to 4: 28 µs.
     */
    @Test
    void tonesAreWeighedByWhatTheyTell() {
        double w = 2 * Math.PI * 1e-6;
        PairDelay pair =
                PairDelay.of(
                        List.of(
                                tone(500, -500 * w * 20, 0.002),
                                tone(1000, -1000 * w * 30, 0.002)));
        assertEquals(28, pair.delay().value(), 1e-6);
        assertEquals(20, pair.of(tone(500, -500 * w * 20, 0.002)).value(), 1e-6);
        assertEquals(30, pair.of(tone(1000, -1000 * w * 30, 0.002)).value(), 1e-6);
        // 1.25 times the information of 1 kHz alone; two tones do not tell their own scatter
        double one = Math.hypot(0.105, 0.002) / (1000 * w);
        assertEquals(2 * one / Math.sqrt(1.25), pair.delay().uncertainty(), 1e-6);
    }

    /** Four tones that agree perfectly: a quarter of the amplifiers' share is kept. */
    @Test
    void agreementByChanceIsNotBelieved() {
        double[] hz = {400, 600, 800, 1000};
        PairDelay pair = PairDelay.of(tones(12, 0, hz));
        double squares = Arrays.stream(hz).map(f -> f * f).sum();
        double one = 1e6 * Math.hypot(0.105, 0.002) / (2 * Math.PI * Math.sqrt(squares));
        assertEquals(2 * 0.25 * one, pair.delay().uncertainty(), 1e-6);
    }

    /**
     * Tones that disagree tell their own scatter: four of one frequency whose phases are 0.3 rad
     * over and under the mean, chi² 4·0.3²/0.105², by 3 degrees of freedom.
     */
    @Test
    void disagreementWidensTheUncertainty() {
        List<HeardTone> tones =
                List.of(
                        tone(1000, 0.3, 0.002),
                        tone(1000, -0.3, 0.002),
                        tone(1000, 0.3, 0.002),
                        tone(1000, -0.3, 0.002));
        PairDelay pair = PairDelay.of(tones);
        assertEquals(0, pair.delay().value(), 1e-6);
        double one = 1e6 / (2 * Math.PI * 1000) / Math.sqrt(4);
        assertEquals(2 * one * 0.3 * Math.sqrt(4 / 3.0), pair.delay().uncertainty(), 1e-6);
    }

    /** Up to 450 µs either way; a delay beyond that is taken for one within. */
    @Test
    void delaysAreLookedForAsFarAsHeadsStandAskew() {
        assertEquals(449, PairDelay.of(tones(449, 0, 500, 1000)).delay().value(), 1e-6);
        assertEquals(-449, PairDelay.of(tones(-449, 0, 500, 1000)).delay().value(), 1e-6);
        // −560 µs of 1 kHz are 440 µs less a period
        assertEquals(440, PairDelay.of(tones(-560, 0, 1000)).delay().value(), 1e-6);
    }

    /** Of one tone alone: −80 µs and 20 µs of 10 kHz; the one nearer to nothing first. */
    @Test
    void oneToneAloneIsSaidToBeOne() {
        assertTrue(
                PairDelay.of(tones(20, 0, 10_000))
                        .delay()
                        .reason()
                        .startsWith(
                                "A single tone of 10000 Hz cannot tell which period is meant: delays"
                                        + " of 20.0 µs and -80.0 µs fit"));
        Quantity several = PairDelay.of(tones(100, 0, 8000, 10_000)).delay();
        assertTrue(
                several.reason()
                        .startsWith(
                                "The tones, of which the lowest on both channels has"
                                        + " 8000 Hz, cannot tell"));
        // nor can one of them by itself
        PairDelay open = PairDelay.of(tones(100, 0, 8000, 10_000));
        assertEquals(several, open.of(tones(100, 0, 8000).get(0)));
        assertEquals(0, open.seconds(), 0);
    }

    /**
     * A tone that only one channel holds tells nothing, and has no delay. Turned over, a tone's own
     * delay is that of the turned channel.
     */
    @Test
    void eachToneHasItsOwnDelay() {
        HeardTone single = Heard.tone(0, 3150, -20);
        List<HeardTone> turned = tones(25, Math.PI, 100, 1000, 10_000);
        PairDelay pair = PairDelay.of(List.of(single, turned.get(0), turned.get(1), turned.get(2)));
        assertTrue(pair.isInverted());
        assertEquals(25, pair.of(turned.get(1)).value(), 1e-6);
        assertEquals("The tone is not heard on both channels.", pair.of(single).reason());
        assertFalse(PairDelay.of(tones(25, 0, 100, 1000)).isInverted());
        assertFalse(PairDelay.of(List.of(single)).isInverted());
    }

    /**
     * 300 Hz turned over would be a delay of 1.67 ms, and 1 kHz one of 0.5 ms, which no head has.
     * If neither way is a delay that heads have, polarity is left as it is: 0.7 ms of 300 Hz,
     * turned over, were −0.97 ms.
     */
    @Test
    void aToneAloneIsTurnedOverRatherThanLateBeyondMeasure() {
        for (double hz : new double[] {63, 300, 1000}) {
            PairDelay pair = PairDelay.of(tones(0, Math.PI, hz));
            assertTrue(pair.isInverted(), hz + " Hz");
            assertEquals(0, pair.delay().value(), 1e-6);
        }
        PairDelay far = PairDelay.of(tones(700, 0, 300));
        assertFalse(far.isInverted());
        assertEquals(700, far.delay().value(), 1e-6);
        assertFalse(PairDelay.of(tones(440, 0, 1000)).isInverted());
    }
}
