package offtape.report.measure.noise;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import offtape.core.audio.MemoryAudio;
import offtape.core.dsp.PowerDensity;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;
import offtape.core.unit.Quantity;
import offtape.report.locate.Location;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.locate.TimeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Tones whose level swings in a known way, beside silence of a known density. */
class ModulationNoiseTest {

    private static final int RATE = 16_000;
    private static final double PEAK = 0.2;

    private static Cue.Tone tone(double hz, double seconds) {
        return new Cue.Tone("speed", ChannelSet.BOTH, 0, Math.round(seconds * RATE), hz, 0);
    }

    private static ProgrammeReturn returned(DoubleUnaryOperator sound, Cue.Tone... tones) {
        double[] x = new double[(int) (3.5 * RATE)];
        for (int i = 0; i < x.length; i++) {
            x[i] = sound.applyAsDouble((double) i / RATE);
        }
        CueSheet sheet = new CueSheet(RATE, x.length, -18, null, List.of(tones));
        MemoryAudio audio = new MemoryAudio("tone", RATE, x);
        Location location =
                new Location(
                        TimeMap.straight(0, 1, 3.5),
                        3.5,
                        0,
                        0,
                        List.of(1),
                        true,
                        true,
                        0,
                        3.5,
                        List.of());
        return new ProgrammeReturn(new Programme(sheet, audio), audio, location);
    }

    /** Silence whose density is the same everywhere: a single pulse of 1 s, seen whole. */
    private static NoiseDensities silence(double perHz) {
        int length = 1 << 14;
        double[] x = new double[length];
        x[length / 2] = 1;
        double unit = PowerDensity.of(x, RATE, length).at(length / 4);
        x[length / 2] = Math.sqrt(perHz / unit);
        return new NoiseDensities(
                new double[][] {x}, new PowerDensity[] {PowerDensity.of(x, RATE, length)});
    }

    private static DoubleUnaryOperator swinging(double hz, double share, double rateHz) {
        return t ->
                PEAK
                        * (1 + share * Math.sin(2 * Math.PI * rateHz * t))
                        * Math.sin(2 * Math.PI * hz * t);
    }

    /** A level that swings by 2 % has the mean square 0.02²/2 of it: −36.99 dB. */
    @ParameterizedTest
    @CsvSource({"3150, 100", "3150, 900", "3150, 15", "2500, 200", "5000, 300"})
    void theSwingOfTheLevelIsRead(double hz, double rateHz) {
        Quantity found =
                ModulationNoise.of(returned(swinging(hz, 0.02, rateHz), tone(hz, 3.4)), silence(0))
                        .level(0);
        assertEquals(-36.99, found.value(), 0.03);
        assertEquals("dB", found.unit());
        assertTrue(found.uncertainty() < 0.15, found.toString());
    }

    /** Swings slower than 10 Hz or faster than 1 kHz do not count. */
    @ParameterizedTest
    @CsvSource({"3", "1060"})
    void otherSwingsDoNotCount(double rateHz) {
        double[] both = new double[2];
        both[0] =
                ModulationNoise.of(
                                returned(
                                        t ->
                                                swinging(3150, 0.02, 100).applyAsDouble(t)
                                                        * (1
                                                                + 0.02
                                                                        * Math.sin(
                                                                                2 * Math.PI * rateHz
                                                                                        * t)),
                                        tone(3150, 3.4)),
                                silence(0))
                        .level(0)
                        .value();
        assertEquals(-36.99, both[0], 0.05);
    }

    /**
     * Steady noise of density N adds half its power in both sidebands, N·2·990 Hz over twice the
     * tone's 0.02. Where that is half of 2·10⁻⁴ the other half is left: −40 dB, and the doubt of
     * the silence, 2 % for one deviation, is 4 % of it.
     */
    @Test
    void steadyNoiseIsTakenOut() {
        double perHz = 1e-4 * 2 * PEAK * PEAK / 2 / (2 * 990);
        Quantity found =
                ModulationNoise.of(
                                returned(swinging(3150, 0.02, 100), tone(3150, 3.4)),
                                silence(perHz))
                        .level(0);
        assertEquals(-40, found.value(), 0.05);
        assertEquals(0.1 + 10 * Math.log10(1.04), found.uncertainty(), 0.02);
    }

    /** Noise of a hundredth of the tone and more makes it faint. */
    @ParameterizedTest
    @CsvSource({"0.0098, false", "0.0102, true"})
    void aToneInMuchNoiseIsFaint(double share, boolean faint) {
        double perHz = share * 2 * PEAK * PEAK / 2 / (2 * 990);
        Quantity found =
                ModulationNoise.of(
                                returned(swinging(3150, 0.02, 100), tone(3150, 3.4)),
                                silence(perHz))
                        .level(0);
        assertFalse(found.isKnown());
        assertEquals(faint, found.reason().equals("The tone for it is too short or too faint."));
    }

    /** A tone of both channels between 2.5 and 7 kHz, of 3 s, whose sidebands fit under 8 kHz. */
    @ParameterizedTest
    @CsvSource({
        "2500, 3, BOTH, true",
        "2499, 3, BOTH, false",
        "3150, 2.99, BOTH, false",
        "3150, 3, LEFT, false",
        "6549, 3, BOTH, true",
        "6550, 3, BOTH, false"
    })
    void onlySomeTonesTell(double hz, double seconds, ChannelSet channels, boolean tells) {
        Cue.Tone tone = new Cue.Tone("t", channels, 0, Math.round(seconds * RATE), hz, 0);
        Quantity found = ModulationNoise.of(returned(swinging(hz, 0.02, 100), tone), null).level(0);
        assertEquals(
                tells
                        ? "The recording holds no recorded silence to tell it from steady noise."
                        : "The recording holds no steady tone between 2.5 and 7 kHz long enough.",
                found.reason());
    }

    /** Of several the longest is read: here the one that swings. */
    @Test
    void theLongestToneIsRead() {
        Cue.Tone other = new Cue.Tone("other", ChannelSet.BOTH, 0, 3L * RATE, 5000, 0);
        Quantity found =
                ModulationNoise.of(
                                returned(
                                        t ->
                                                swinging(3150, 0.02, 100).applyAsDouble(t)
                                                        + PEAK * Math.sin(2 * Math.PI * 5000 * t),
                                        other,
                                        tone(3150, 3.4)),
                                silence(0))
                        .level(0);
        assertEquals(-36.99, found.value(), 0.05);
    }

    /** No tone where it should be. */
    @Test
    void aToneThatIsMissingIsFaint() {
        Quantity found = ModulationNoise.of(returned(t -> 0, tone(3150, 3.4)), silence(0)).level(0);
        assertEquals("The tone for it is too short or too faint.", found.reason());
    }

    /**
     * Blocks of 1 to 8 thousandths: median 4.5, quartiles 3 and 7, so a deviation of 2/0.6745; the
     * median of 0.6·8 independent values scatters by 1.2533/√4.8 of that.
     */
    @Test
    void blocksThatScatterAreUncertain() {
        double[] powers = {8e-3, 1e-3, 3e-3, 2e-3, 7e-3, 6e-3, 5e-3, 4e-3};
        double steady = 1e-4;
        double doubt = 2 * Math.hypot(1.2533 / Math.sqrt(4.8) * 2e-3 / 0.6745, 0.02 * steady);
        Quantity found = ModulationNoise.figure(powers, steady);
        assertEquals(10 * Math.log10(4.4e-3), found.value(), 1e-9);
        assertEquals(10 * Math.log10(1 + doubt / 4.4e-3) + 0.1, found.uncertainty(), 1e-9);
    }

    /** The middle one of five; nothing scatters, so 4 % of the steady share are in doubt. */
    @Test
    void theMedianKeepsDropoutsOut() {
        double[] powers = {3e-3, 9, 3e-3, 3e-3, 0};
        Quantity found = ModulationNoise.figure(powers, 1e-3);
        assertEquals(10 * Math.log10(2e-3), found.value(), 1e-9);
        assertEquals(10 * Math.log10(1.02) + 0.1, found.uncertainty(), 1e-9);
    }

    /**
     * What does not exceed its doubt is below the sum of both: 4 % of a steady share of 0.002, with
     * an excess of 7·10⁻⁵ −38.24 dB, with none and with less than none −40.97 dB.
     */
    @ParameterizedTest
    @CsvSource({"2.07e-3, -38", "2e-3, -40", "1e-3, -40"})
    void whatDoesNotStandOutHasABound(double median, int below) {
        double[] powers = {median, median, median, median};
        assertEquals(
                "It does not stand out of the steady noise: it is below "
                        + below
                        + " dB re the tone.",
                ModulationNoise.figure(powers, 2e-3).reason());
    }
}
