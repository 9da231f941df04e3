package offtape.report.measure.speed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import offtape.core.audio.MemoryAudio;
import offtape.core.fault.UnusableInputException;
import offtape.report.result.Speed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Recordings as they come: what is read of them, and what is said. */
class BareToneTest {

    private static final DoubleUnaryOperator TONE = Tones.wavering(3150, 0.2, 0.1, 4);

    @Test
    void ofSeveralStretchesTheLongestIsRead() {
        Speed s = read(16, t -> t >= 6 && t < 7 ? 0 : TONE.applyAsDouble(t));
        assertEquals(7.2, s.fromSeconds(), 0.2);
        assertEquals(8.5, s.seconds(), 0.3);
        assertEquals(0.1, s.weightedPeak().value(), 0.002);
        String note = s.notes().get(0);
        assertTrue(
                note.startsWith("The tone sounds in 2 stretches; the longest was read, from 7."),
                note);
    }

    @Test
    void aStretchMayBeChosen() {
        MemoryAudio audio = audio(16, t -> t >= 6 && t < 7 ? 0 : TONE.applyAsDouble(t));
        Speed s = BareTone.measure(audio, OptionalDouble.empty(), 0, 6);
        assertEquals(0.2, s.fromSeconds(), 0.1);
        assertEquals(5.5, s.seconds(), 0.2);
        assertEquals(List.of(), s.notes());
        assertTrue(BareTone.measure(audio, OptionalDouble.empty(), 7.9, 99).fromSeconds() > 8);
    }

    /** Bursts of noise whose level changes four times a second, as speech does. */
    @Test
    void speechBeforeTheToneIsPassedOver() {
        DoubleUnaryOperator noise = Tones.noise(0.1, 7);
        Speed s =
                read(
                        13,
                        t ->
                                t < 4
                                        ? noise.applyAsDouble(t) * ((int) (4 * t) % 3) / 2
                                        : TONE.applyAsDouble(t));
        assertEquals(4.2, s.fromSeconds(), 0.2);
        assertEquals(0.1, s.weightedPeak().value(), 0.002);
        assertEquals(List.of(), s.notes());
    }

    /** 1 kHz for 12 s, 10 kHz for 8 s, 3150 Hz for 6 s: as on a calibration tape. */
    @Test
    void ofSeveralTonesTheOneForFlutterIsRead() {
        DoubleUnaryOperator level = Tones.steady(1000);
        DoubleUnaryOperator highs = Tones.steady(10_000);
        MemoryAudio audio =
                audio(26, t -> (t < 12 ? level : t < 20 ? highs : TONE).applyAsDouble(t));
        Speed s = BareTone.measure(audio, OptionalDouble.empty(), 0, 99);
        assertEquals(3150, s.toneFrequencyHz());
        assertEquals(0.2, s.deviation().value(), 0.001);
        assertEquals(
                "Other tones in the recording: 1000 Hz, 10000 Hz. --frequency chooses another.",
                s.notes().get(0));
        Speed named = BareTone.measure(audio, OptionalDouble.of(10_000), 0, 99);
        assertEquals(0, named.deviation().value(), 0.001);
        assertEquals(20 - 0.2, named.fromSeconds() + named.seconds(), 0.2);
    }

    /** From full level in 40 dB of noise down by 6 dB a second. */
    @Test
    void aFadingToneIsReadToWhereNoiseTakesOver() {
        DoubleUnaryOperator noise = Tones.noise(Tones.sigma(40), 9);
        Speed s =
                read(
                        14,
                        t ->
                                TONE.applyAsDouble(t) * Math.pow(10, -0.3 * Math.max(0, t - 6))
                                        + noise.applyAsDouble(t));
        // 38 dB down, at 6 + 38/6 s, tone and noise have about the shares that are parted at.
        assertEquals(12.3, s.fromSeconds() + s.seconds(), 0.6);
        String note = s.notes().get(0);
        assertTrue(note.startsWith("The tone fades: at its end, at 12."), note);
        assertEquals(0.2, s.deviation().value(), 0.002);
        assertTrue(s.floors().weightedRms() > 0.0005, "the noise of the end is in the floor");
    }

    @Test
    void twoTonesAtOnceAreRefusedInWords() {
        String message = refusal(8, Tones.sum(TONE, Tones.steady(1000)), OptionalDouble.empty());
        assertTrue(message.contains("Two tones sound at once, 1000 Hz and 315"), message);
        // 12 dB below the tone, and in its band: it would read as 150 Hz of flutter.
        DoubleUnaryOperator close = t -> 0.25 * Tones.steady(3000).applyAsDouble(t);
        String near = refusal(8, Tones.sum(TONE, close), OptionalDouble.empty());
        assertTrue(near.startsWith("Another tone of 3000 Hz sounds along with the tone"), near);
    }

    /** Hum-like company 14 dB down: told, and without influence. */
    @Test
    void aQuietToneFarAwayIsNamed() {
        DoubleUnaryOperator far = t -> 0.2 * Tones.steady(1000).applyAsDouble(t);
        Speed s = read(9, Tones.sum(TONE, far));
        assertEquals(0.1, s.weightedPeak().value(), 0.002);
        assertEquals(
                "Another tone of 1000 Hz sounds along, 14 dB lower; it is far enough away not to"
                        + " disturb.",
                s.notes().get(0));
    }

    /** Flutter has a line on either side; one of 1 % at 60 Hz is no second tone. */
    @Test
    void flutterIsNoSecondTone() {
        Speed s = read(9, Tones.wavering(3150, 0, 1, 60));
        assertEquals(1, s.unweightedPeak().value(), 0.01);
        assertEquals(List.of(), s.notes());
    }

    /** Mains of 50 Hz instead of 60 Hz and the other way round, and a fifth slow. */
    @ParameterizedTest
    @CsvSource({"2625, -16.6667", "3780, 20", "2520, -20"})
    void farOffSpeedIsReadOnceTheFrequencyIsNamed(double hz, double percent) {
        MemoryAudio audio = audio(8, Tones.wavering(hz, 0, 0.1, 4));
        Speed s = BareTone.measure(audio, OptionalDouble.of(3150), 0, 99);
        assertEquals(percent, s.deviation().value(), 0.001);
        // The deviation is of the tone that sounds, read in shares of the nominal one.
        double expected = 0.1 * (1 + percent / 100);
        assertEquals(expected, s.weightedPeak().value(), 0.01 * expected);
    }

    @ParameterizedTest
    @CsvSource({
        "2625, It could be 3150 Hz at 5/6 of the speed",
        "3780, It could be 3150 Hz at 6/5 of the speed",
        "6300, It could be 3150 Hz at twice the speed",
        "1575, It could be 3150 Hz at half the speed",
        "700, Say with --frequency"
    })
    void anOddToneIsAskedFor(double hz, String guess) {
        String message = refusal(7, Tones.steady(hz), OptionalDouble.empty());
        assertTrue(message.contains("which is near no usual test tone. " + guess), message);
    }

    /** 3060 Hz is 3000 Hz 2 % fast or 3150 Hz 2.9 % slow. */
    @Test
    void doubtIsTold() {
        Speed s = read(8, Tones.steady(3060));
        assertEquals(2, s.deviation().value(), 0.001);
        assertEquals(
                "A tone of 3060 Hz was taken for 3000 Hz; if it should have 3150 Hz, say so with"
                        + " --frequency.",
                s.notes().get(0));
        assertEquals(List.of(), read(8, Tones.steady(3140)).notes());
    }

    /** A fifth of a second stays clear at both ends; the differentiator takes 24 values a side. */
    @Test
    void aToneWhosePlaceIsKnownIsReadThere() {
        MemoryAudio audio = audio(8, t -> t < 1 || t > 7 ? 0 : TONE.applyAsDouble(t));
        Speed s = BareTone.at(audio, 1, 7, 3150, 3156);
        double taken = s.fromSeconds() - 1.2;
        assertTrue(taken > 0.01 && taken < 0.0242, "24 values at 1000 or more a second");
        assertEquals(5.6, s.seconds() + 2 * taken, 0.002);
        assertEquals(0.2, s.deviation().value(), 0.001);
        assertEquals(0.1, s.weightedPeak().value(), 0.002);
        assertEquals(List.of(), s.notes());
        assertEquals(1500, s.scrapeBandHz()[1]);
        Speed brief = BareTone.at(audio, 1, 2.4, 3150, 3156);
        assertEquals(
                "The tone is too short or too unsteady to be read.", brief.deviation().reason());
    }

    private static Speed read(double seconds, DoubleUnaryOperator sound) {
        return BareTone.measure(
                audio(seconds, sound), OptionalDouble.empty(), 0, Double.POSITIVE_INFINITY);
    }

    private static String refusal(
            double seconds, DoubleUnaryOperator sound, OptionalDouble nominal) {
        MemoryAudio audio = audio(seconds, sound);
        return assertThrows(
                        UnusableInputException.class, () -> BareTone.measure(audio, nominal, 0, 99))
                .getMessage();
    }

    /** At 24 kHz, which is quick and holds every tone in use. */
    private static MemoryAudio audio(double seconds, DoubleUnaryOperator sound) {
        return Tones.audio(24_000, seconds, sound);
    }
}
