package offtape.report.measure.channel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.unit.Quantity;
import offtape.report.measure.sweep.Leakage;
import offtape.report.result.DelayTrace;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Phases by formula, a thousand values a second: 1 rad of 5 kHz is 31.83 µs. */
class WanderOfPhaseTest {

    private static final double TONE_HZ = 5000;
    private static final double US = 1e6 / (2 * Math.PI * TONE_HZ);
    private static final Quantity ZERO = Quantity.known(0, "µs", 0.1);
    private static final InterchannelDelay NOT_KNOWN = InterchannelDelay.unknown("not known");

    /** Noise on the phase, radians, in front of what a formula gives over time in seconds. */
    private static PairPhase phase(double seconds, double noise, DoubleUnaryOperator radians) {
        Random random = new Random(11);
        double[] p = new double[(int) Math.round(1000 * seconds)];
        for (int k = 0; k < p.length; k++) {
            p[k] = noise * random.nextGaussian() + radians.applyAsDouble(k / 1000.0);
        }
        return new PairPhase(p, 1000, 0, TONE_HZ);
    }

    private static double sine(double hz, double t) {
        return Math.sin(2 * Math.PI * hz * t);
    }

    /**
     * A sine of 0.1 rad about anything: rms 0.1/√2, from peak to peak 0.2, up to 20 Hz. Without
     * noise half a percent is left to doubt, and a nanosecond.
     */
    @ParameterizedTest
    @CsvSource({"1, 0", "7, 2", "19, -1"})
    void aSineIsRead(double hz, double mean) {
        DelayWander wander = DelayWander.of(phase(20, 0, t -> mean + 0.1 * sine(hz, t)), NOT_KNOWN);
        double rms = US * 0.1 / Math.sqrt(2);
        assertEquals(rms, wander.rms().value(), 0.006 * rms);
        assertEquals(Math.hypot(0.001, 0.005 * rms), wander.rms().uncertainty(), 1e-4);
        assertEquals(0.2 * US, wander.peakToPeak().value(), 0.006 * US * 0.2);
        double doubt = Math.hypot(0.001, 0.005 * 0.2 * US);
        assertEquals(doubt, wander.peakToPeak().uncertainty(), 0.01 * doubt);
        assertEquals("µs", wander.peakToPeak().unit());
    }

    /** Above 40 Hz no tape skews. What is hidden is less than a nanosecond of its own. */
    @Test
    void aLineOfHumIsNoWander() {
        DelayWander wander = DelayWander.of(phase(20, 0, t -> 0.1 * sine(60, t)), NOT_KNOWN);
        assertFalse(wander.rms().isKnown());
        assertSame(wander.rms(), wander.peakToPeak());
        assertTrue(hiddenUs(wander) < 0.01, wander.rms().reason());
    }

    /** A steady phase: what filters may make of it, 0.001 µs, is the limit. */
    @Test
    void aSteadyPhaseWandersLessThanCanBeTold() {
        DelayWander wander = DelayWander.of(phase(20, 0, t -> 0.4), NOT_KNOWN);
        assertEquals(0.001, hiddenUs(wander), 0.0011);
    }

    private static double hiddenUs(DelayWander wander) {
        return Double.parseDouble(
                wander.rms().reason().replaceAll(".*less than ([0-9.]+) µs rms.*", "$1"));
    }

    /**
     * White noise of 0.1 rad has a density of 2·0.1²/1000 = 2e-5 rad²/Hz; up to the middle of the
     * filter's slope, 30 Hz, that is 6e-4 rad². 60 · 20 independent values tell their sum within
     * 2·√(2/1200) = 8.2 % and the density is known within a tenth: 12.9 %, 7.7e-5 rad². A sine of
     * 0.06 rad, 1.8e-3 rad², is then told within 7.7e-5/(2·0.0424) = 9.1e-4 rad. Noise of that
     * power spreads by 2·√(2·6e-4·ln 1200) = 0.185 rad.
     */
    @Test
    void theShareOfTheNoiseIsTakenOut() {
        DelayWander wander = DelayWander.of(phase(20, 0.1, t -> 0.06 * sine(3, t)), NOT_KNOWN);
        double rms = US * 0.06 / Math.sqrt(2);
        assertEquals(rms, wander.rms().value(), wander.rms().uncertainty());
        double doubt = Math.hypot(9.1e-4 * US, 0.005 * rms);
        assertEquals(doubt, wander.rms().uncertainty(), 0.15 * doubt);
        assertEquals(0.185 * US, wander.peakToPeak().uncertainty(), 0.1 * 0.185 * US);
        // twice the sine's peak, and the noise's spread squared is out of it
        assertEquals(0.12 * US, wander.peakToPeak().value(), 0.6 * 0.12 * US);
    }

    /** Noise alone: up to twice that doubt, √7.7e-5 = 8.8e-3 to 12.4e-3 rad. */
    @Test
    void noiseHidesWander() {
        DelayWander wander = DelayWander.of(phase(20, 0.1, t -> 0), NOT_KNOWN);
        assertTrue(hiddenUs(wander) > 0.95 * 8.8e-3 * US, wander.rms().reason());
        assertTrue(hiddenUs(wander) < 1.05 * 12.4e-3 * US, wander.rms().reason());
    }

    /**
     * The phase of 5 kHz says the same of delays a period, 200 µs, apart; the delay over the whole
     * band says which is meant, with what responses add and half a turn of polarity.
     */
    @ParameterizedTest
    @CsvSource({
        "30, 0, false, 30",
        "330, 0, false, 330",
        "-270, 0, false, -270",
        "310, 20, false, 330",
        "210, 120, false, 330",
        "330, 0, true, 330",
        "-170, 5, true, -165"
    })
    void theTraceLiesAtTheDelayOfTheBand(
            double delay, double response, boolean opposite, double mean) {
        Quantity band = Quantity.known(delay, "µs", 0.1);
        Quantity added = Quantity.known(response, "µs", 0.1);
        InterchannelDelay whole = new InterchannelDelay(band, added, ZERO, opposite);
        double radians = Math.IEEEremainder(mean / US + (opposite ? Math.PI : 0), 2 * Math.PI);
        DelayTrace trace = DelayWander.of(phase(5, 0, t -> radians), whole).trace();
        assertEquals(100, trace.microseconds().length);
        for (double us : trace.microseconds()) {
            assertEquals(mean, us, 1e-6);
        }
    }

    /** 20 values a second, each the mean of 50 ms in whose middle it lies. */
    @Test
    void theTraceIsTheDelayOverTime() {
        DelayTrace trace = DelayWander.of(phase(5, 0, t -> t), NOT_KNOWN).trace();
        assertEquals(100, trace.seconds().length);
        assertEquals(0.025, trace.seconds()[0], 1e-12);
        assertEquals(4.975, trace.seconds()[99], 1e-12);
        // the mean is taken out: from −2.5 s on, a microsecond of 1 rad each second
        assertEquals(US * -2.475, trace.microseconds()[0], 1e-3 * US);
        assertEquals(US * 2.475, trace.microseconds()[99], 2e-3 * US);
        assertEquals(0, Arrays.stream(trace.microseconds()).average().orElseThrow(), 3e-3 * US);
    }

    @Test
    void theDelayOfAnInterfaceLiesBefore() {
        DelayWander wander = DelayWander.of(phase(5, 0, t -> 0.1 * sine(2, t)), NOT_KNOWN);
        DelayWander earlier = wander.earlier(Quantity.known(7, "µs", 0.1));
        for (int i = 0; i < 100; i++) {
            double before = wander.trace().microseconds()[i];
            assertEquals(before - 7, earlier.trace().microseconds()[i], 1e-12);
        }
        assertSame(wander.rms(), earlier.rms());
        assertSame(wander.trace().seconds(), earlier.trace().seconds());
        assertSame(wander, wander.earlier(Quantity.unknown("not known")));
        DelayWander none = DelayWander.unknown("no tone");
        assertSame(none, none.earlier(Quantity.known(7, "µs", 0.1)));
        assertNull(none.trace());
    }

    /** Of 4 s or more, from 300 Hz to 12.5 kHz, on both channels. */
    @ParameterizedTest
    @CsvSource({
        "BOTH, 4, 300, true",
        "BOTH, 4, 12500, true",
        "BOTH, 3.99, 3150, false",
        "BOTH, 4, 299, false",
        "BOTH, 4, 12600, false",
        "RIGHT, 4, 3150, false"
    })
    void aLongToneOnBothChannelsTells(ChannelSet side, double seconds, double hz, boolean told) {
        Cue tone = Pair.tone("tone", side, 0.1, seconds, hz);
        DelayWander wander = DelayWander.of(Pair.of(tone).play(), Leakage.NONE, NOT_KNOWN);
        assertEquals(told, wander.trace() != null);
        if (!told) {
            assertEquals(
                    "The recording holds no steady tone of 4 s on both channels.",
                    wander.rms().reason());
        }
    }

    /** Less 120 ms at both ends, 20 values a second. */
    @Test
    void theLongestToneTells() {
        Cue brief = Pair.tone("brief", ChannelSet.BOTH, 0.1, 4, 3150);
        Cue longer = Pair.tone("longer", ChannelSet.BOTH, 4.2, 5, 3150);
        Cue last = Pair.tone("last", ChannelSet.BOTH, 9.4, 4.5, 3150);
        DelayTrace trace =
                DelayWander.of(Pair.of(brief, longer, last).play(), Leakage.NONE, NOT_KNOWN)
                        .trace();
        // the last of them lies half a value before the end, or a little more
        assertEquals(4.7, trace.seconds()[trace.seconds().length - 1], 0.05);
    }

    /** What a tone of 500 Hz tells ends at a fifth of it; noise is looked for below that. */
    @Test
    void noiseOnALowToneIsNoWander() {
        LongTone tone = new LongTone(8000, 500, 12).hiss(-35);
        DelayWander wander = DelayWander.of(tone.play(9), Leakage.NONE, NOT_KNOWN);
        assertFalse(wander.rms().isKnown(), () -> wander.rms().toString());
    }
}
