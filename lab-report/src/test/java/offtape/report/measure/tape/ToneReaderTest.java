package offtape.report.measure.tape;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import offtape.core.audio.MemoryAudio;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Figures of a tone that is written down as a formula. */
class ToneReaderTest {

    private static final double PEAK_DB = 20 * Math.log10(Sounding.PEAK);

    private static List<HeardTone> read(MemoryAudio sound) {
        double seconds = (double) sound.frames() / sound.sampleRateHz();
        return ToneReader.all(sound, 0, seconds, Sounding.HZ);
    }

    private static HeardTone one(MemoryAudio sound) {
        List<HeardTone> tones = read(sound);
        assertEquals(1, tones.size());
        return tones.get(0);
    }

    /** 0.2 is −13.98 dB re full scale; the right channel 3 dB lower and 60 µs late. */
    @Test
    void aCleanToneIsReadExactly() {
        double late = 60e-6;
        double gain = Math.pow(10, -3 / 20.0);
        HeardTone tone = one(new Sounding(4).at(401.5).right(gain, t -> late).pair());
        assertEquals(PEAK_DB, tone.levels().get(0).value(), 1e-3);
        assertEquals(PEAK_DB - 3, tone.levels().get(1).value(), 1e-3);
        assertEquals("dBFS", tone.levels().get(0).unit());
        assertEquals(-3, tone.difference().value(), 1e-3);
        assertEquals("dB", tone.difference().unit());
        assertEquals(401.5, tone.hz(), 1e-3);
        assertEquals(-2 * Math.PI * 401.5 * late, tone.phase().radians(), 1e-5);
        assertEquals(0, tone.phase().wander(), 1e-8);
        assertEquals(0, tone.fromSeconds(), 0.05);
        assertEquals(4, tone.toSeconds(), 0.11);
        assertEquals(0, tone.leftOutSeconds(), 1e-9);
        // what filters and rounding may add: 0.004 dB, 2·10⁻⁶ of the frequency, 10⁻⁴ rad
        assertEquals(0.004, tone.levels().get(0).uncertainty(), 4e-4);
        assertEquals(0.004, tone.difference().uncertainty(), 4e-4);
        assertEquals(2e-6 * 401.5, tone.hzUncertainty(), 1e-4);
        assertEquals(1e-4, tone.phase().standard(), 1e-5);
    }

    /**
     * Noise adds its own power, which is taken out again; the figures say how far it moves them.
     */
    @Test
    void theNoisesPowerIsTakenOut() {
        // 14 dB under the tone in 50 to 96 Hz of 1000 Hz: some 0.3 dB would be added
        HeardTone tone = one(new Sounding(6).right(0.5, t -> 0).noise(0.12, 0.06).pair());
        assertEquals(PEAK_DB, tone.levels().get(0).value(), tone.levels().get(0).uncertainty());
        assertEquals(PEAK_DB, tone.levels().get(0).value(), 0.25);
        assertEquals(
                20 * Math.log10(0.5), tone.difference().value(), tone.difference().uncertainty());
        assertTrue(tone.levels().get(0).uncertainty() > 0.05);
        assertTrue(tone.levels().get(0).uncertainty() < 0.5);
        assertTrue(tone.difference().uncertainty() > 0.05);
        assertTrue(tone.difference().uncertainty() < 0.6);
        assertEquals(0, tone.phase().radians(), 3 * tone.phase().standard());
        assertEquals(0, tone.phase().wander(), tone.phase().wanderUncertainty());
    }

    /** A sine of 0.1 rad peak between the channels has the mean square 0.005. */
    @Test
    void wanderIsThatOfThePhase() {
        double peak = 0.1 / (2 * Math.PI * Sounding.HZ);
        DoubleUnaryOperator late = t -> 3e-5 + peak * Math.sin(2 * Math.PI * t);
        HeardTone tone = one(new Sounding(6).right(1, late).noise(0.002, 0.002).pair());
        assertEquals(0.005, tone.phase().wander(), 0.0003);
        assertTrue(tone.phase().wanderUncertainty() < 0.002);
        assertEquals(-2 * Math.PI * Sounding.HZ * 3e-5, tone.phase().radians(), 0.01);
    }

    /** Half a turn: between −π and π, whichever way the phase wanders about it. */
    @Test
    void oppositePolarityHasNoSeam() {
        double wander = 0.05 / (2 * Math.PI * Sounding.HZ);
        HeardTone tone =
                one(new Sounding(6).right(-1, t -> wander * Math.sin(2 * Math.PI * t)).pair());
        assertEquals(Math.PI, Math.abs(tone.phase().radians()), 0.01);
        assertEquals(0.00125, tone.phase().wander(), 1e-4);
        assertEquals(0, tone.difference().value(), 1e-3);
    }

    /** A right channel with noise alone holds no tone; the pair is not told. */
    @Test
    void aChannelWithoutTheToneIsSaid() {
        HeardTone right = one(new Sounding(4).right(0, t -> 0).noise(0.001, 0.001).pair());
        assertEquals(PEAK_DB, right.levels().get(0).value(), 0.01);
        assertEquals("The tone is not heard on the right channel.", right.levels().get(1).reason());
        assertEquals("The tone is not heard on the right channel.", right.difference().reason());
        assertNull(right.phase());
        HeardTone digital = one(new Sounding(4).right(0, t -> 0).pair());
        assertEquals(
                "The tone is not heard on the right channel.", digital.levels().get(1).reason());
        HeardTone mono = one(new Sounding(4).mono());
        assertEquals(1, mono.levels().size());
        assertEquals("The recording has one channel only.", mono.difference().reason());
        assertNull(mono.phase());
    }

    /** A channel that is left out is the left one, too. */
    @Test
    void aLeftChannelWithoutTheToneIsSaid() {
        double[][] x = new Sounding(4).pair().read(0, 4 * Sounding.RATE);
        x[0] = new double[x[0].length];
        HeardTone left = one(new MemoryAudio("left", Sounding.RATE, x));
        assertEquals("The tone is not heard on the left channel.", left.difference().reason());
        assertEquals(PEAK_DB, left.levels().get(1).value(), 1e-3);
        assertNull(left.phase());
    }

    /** Dropouts of 60 ms, 12 dB deep, on either channel: left out with what the filter spreads. */
    @Test
    void dropoutsAreLeftOut() {
        DoubleUnaryOperator holes = t -> t > 2 && t % 1.3 < 0.06 ? -12 : 0;
        HeardTone tone = one(new Sounding(6).level(holes).pair());
        assertEquals(PEAK_DB, tone.levels().get(0).value(), 0.01);
        // at 2.6, 3.9 and 5.2 s: each one to three cells of 54 ms and, to either side, one and what
        // the filter spreads, 0.4/24 s, which is another
        assertTrue(
                tone.leftOutSeconds() > 3 * 0.26 && tone.leftOutSeconds() < 3 * 0.39,
                tone.leftOutSeconds() + " s");
    }

    /** Steps of one tone are told apart, each with its own level. */
    @Test
    void stepsAreTonesOfTheirOwn() {
        List<HeardTone> tones = read(new Sounding(6).level(t -> t < 3 ? 0 : -10).pair());
        assertEquals(2, tones.size());
        assertEquals(PEAK_DB, tones.get(0).levels().get(0).value(), 0.01);
        assertEquals(PEAK_DB - 10, tones.get(1).levels().get(0).value(), 0.01);
        assertEquals(3, tones.get(0).toSeconds(), 0.11);
        assertEquals(3, tones.get(1).fromSeconds(), 0.11);
    }

    /** A tone under its noise is none, nor one at −170 dB, which is rounding. */
    @ParameterizedTest
    @CsvSource({"0.2, -20", "0, -170"})
    void whatDrownsIsNotTold(double noise, double levelDb) {
        assertEquals(
                List.of(), read(new Sounding(4).level(t -> levelDb).noise(noise, noise).pair()));
    }

    /**
     * What is left of a part must be long enough: its ends, 0.15 s and 0.8/24 s, are kept clear of.
     */
    @Test
    void aBriefToneIsReadFromItsMiddle() {
        DoubleUnaryOperator brief = t -> t > 1 && t < 2.3 ? 0 : -200;
        HeardTone tone = one(new Sounding(4).level(brief).pair());
        assertEquals(PEAK_DB, tone.levels().get(0).value(), 1e-3);
        assertEquals(1, tone.fromSeconds(), 0.11);
        assertEquals(2.3, tone.toSeconds(), 0.11);
    }

    /** Angles between −π and π. */
    @ParameterizedTest
    @CsvSource({"0.5, 0.5", "3.2, -3.0831853", "-3.2, 3.0831853", "12.5, -0.0663706"})
    void anglesAreWrapped(double radians, double wrapped) {
        assertEquals(wrapped, ToneReader.wrapped(radians), 1e-7);
    }
}
