package offtape.report.measure.tape;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.List;
import offtape.core.tape.ListedTone;
import offtape.core.tape.ToneList;
import offtape.core.unit.Quantity;
import offtape.report.result.TapeSeries;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The speed of a tape from its tones. */
class TapeSpeedReadingTest {

    private static NamedTone tone(
            int number,
            double nominal,
            double percent,
            double seconds,
            ListedTone.Purpose purpose) {
        return new NamedTone(
                number,
                Heard.tone(20 * number, seconds, nominal * (1 + percent / 100), -20, -20),
                nominal,
                purpose == null ? null : Heard.listed(nominal, null, purpose));
    }

    private static Naming naming(boolean ambiguous, NamedTone... tones) {
        return new Naming(
                List.of(tones),
                new TapeSeries("octave", "octaves", tones.length, 1.0, ambiguous, List.of()),
                List.of());
    }

    private static TapeQuestion question(Double speedToneHz, Double accuracyPercent) {
        ToneList list =
                new ToneList(
                        ToneList.FORMAT,
                        1,
                        null,
                        null,
                        null,
                        null,
                        accuracyPercent,
                        List.of(Heard.listed(1000, null, null)));
        return new TapeQuestion(list, speedToneHz, null, null, null, null);
    }

    private static void assertIs(double value, double uncertainty, Quantity speed) {
        assertEquals(value, speed.value(), 1e-9);
        assertEquals(uncertainty, speed.uncertainty(), 1e-9);
        assertEquals("%", speed.unit());
    }

    /** Of those of the frequency that was named the longest, however it was listed. */
    @Test
    void theToneThatIsNamedTellsTheSpeed() {
        Naming tones =
                naming(
                        true,
                        tone(1, 1000, 0.5, 9, ListedTone.Purpose.SPEED),
                        tone(2, 3150, 1, 2, null),
                        tone(3, 3150, 2, 6, null));
        TapeSpeedReading speed = TapeSpeedReading.of(tones, question(3150.0, null));
        assertEquals(3, speed.tone().number());
        // its own 0.01 % and the clock's 0.005 % of 102 %
        assertIs(2, 1.02 * Math.hypot(0.01, 0.005), speed.deviation());
        assertEquals("Read from tone 3, the tape's tone of 3150 Hz for speed.", speed.from());
    }

    /** Without a word the list says, then 3150 Hz goes before 3000 Hz. */
    @Test
    void theListSaysWhichToneIsForSpeed() {
        NamedTone marked = tone(1, 1000, 0.5, 9, ListedTone.Purpose.SPEED);
        NamedTone usual = tone(2, 3150, 1, 7, null);
        NamedTone older = tone(3, 3000, 2, 8, null);
        TapeSpeedReading speed =
                TapeSpeedReading.of(naming(true, older, usual, marked), question(null, 0.2));
        assertEquals(1, speed.tone().number());
        // ± 0.2 % of the tape's own
        assertIs(0.5, Math.hypot(0.2, 1.005 * Math.hypot(0.01, 0.005)), speed.deviation());
        assertEquals(
                2,
                TapeSpeedReading.of(naming(false, older, usual), question(null, null))
                        .tone()
                        .number());
        assertEquals(
                3, TapeSpeedReading.of(naming(false, older), question(null, null)).tone().number());
    }

    /** Wow and flutter need five seconds; the speed does not. */
    @ParameterizedTest
    @CsvSource({"5, true", "4.99, false"})
    void aToneForWowAndFlutterIsLong(double seconds, boolean isLong) {
        NamedTone tone =
                new NamedTone(
                        1,
                        Heard.tone(0, seconds, 3150, -20, -20),
                        3150.0,
                        Heard.listed(3150, null, ListedTone.Purpose.SPEED));
        TapeSpeedReading speed = TapeSpeedReading.of(naming(false, tone), question(null, null));
        assertEquals(isLong ? tone : null, speed.tone());
        assertEquals(0, speed.deviation().value(), 1e-12);
    }

    /** A thousandth off what was named is another tone. */
    @Test
    void onlyToneOfThatFrequencyCounts() {
        Naming tones = naming(false, tone(1, 3150, 0, 6, null));
        assertEquals(1, TapeSpeedReading.of(tones, question(3152.0, null)).tone().number());
        assertNull(TapeSpeedReading.of(tones, question(3154.0, null)).tone());
    }

    @Test
    void twoWaysTellNoSpeed() {
        TapeSpeedReading speed =
                TapeSpeedReading.of(naming(true, tone(1, 3150, 0, 6, null)), question(null, null));
        assertEquals(
                "The tones fit in more than one way, each with a speed of its own: say"
                        + " --speed-tone, or give the list of the tape with --tones.",
                speed.deviation().reason());
        assertNull(speed.from());
        assertEquals(1, speed.tone().number());
    }

    /**
     * 2 s at 1 % and 6 s at 2 %: weighed by their length 1.75 %, since wow averages out over a long
     * tone. Their scatter: √(2²·0.75² + 6²·0.25²) = √4.5, by √(2/1) for two tones, over 8 s, twice:
     * 0.75 %; the clock adds 0.005 % of 101.75 %.
     */
    @Test
    void allTonesTellTheSpeedByTheirLength() {
        NamedTone unnamed = new NamedTone(3, Heard.tone(0, 9, 437, -20, -20), null, null);
        TapeSpeedReading speed =
                TapeSpeedReading.of(
                        naming(false, tone(1, 1000, 1, 2, null), tone(2, 500, 2, 6, null), unnamed),
                        question(null, null));
        assertIs(1.75, Math.hypot(0.75, 0.005 * 1.0175), speed.deviation());
        assertEquals(
                "Read from 2 tones, which are taken to have been recorded with their nominal"
                        + " frequencies; none was named as the tone for speed.",
                speed.from());
        assertNull(speed.tone());
    }

    /**
     * Three tones of 2 s at 1, 2 and 3 %: √(2²·1² + 2²·1²) by √(3/2) over 6 s, twice: 1.1547 %, as
     * 2·√(1/3) for a mean of three that scatter by 1.
     */
    @Test
    void threeTonesTellTheirScatter() {
        TapeSpeedReading speed =
                TapeSpeedReading.of(
                        naming(
                                false,
                                tone(1, 1000, 1, 2, null),
                                tone(2, 500, 2, 2, null),
                                tone(3, 250, 3, 2, null)),
                        question(null, null));
        assertIs(2, Math.hypot(2 / Math.sqrt(3), 0.005 * 1.02), speed.deviation());
    }

    /** A tone counts for no more than 30 s: 60 s at 2 % and 10 s at 0 % make 1.5 %. */
    @Test
    void aVeryLongToneCountsForHalfAMinute() {
        TapeSpeedReading speed =
                TapeSpeedReading.of(
                        naming(false, tone(1, 1000, 2, 60, null), tone(2, 500, 0, 10, null)),
                        question(null, null));
        assertEquals(1.5, speed.deviation().value(), 1e-9);
    }

    /**
     * Tones that agree are no surer than each is by itself: 0.0101 % of either, weighed 4 and 4 of
     * 8: 0.0101/√2 %. One alone is as sure as it is.
     */
    @Test
    void theUncertaintyOfEachToneCounts() {
        TapeSpeedReading two =
                TapeSpeedReading.of(
                        naming(false, tone(1, 1000, 1, 4, null), tone(2, 500, 1, 4, null)),
                        question(null, 0.05));
        assertIs(
                1,
                Math.hypot(0.05, Math.hypot(0.0101 / Math.sqrt(2), 0.005 * 1.01)),
                two.deviation());
        TapeSpeedReading one =
                TapeSpeedReading.of(naming(false, tone(1, 1000, 1, 4, null)), question(null, null));
        assertIs(1, Math.hypot(0.0101, 0.005 * 1.01), one.deviation());
        assertEquals(
                "Read from one tone, which is taken to have been recorded with its nominal"
                        + " frequency.",
                one.from());
    }

    @Test
    void withoutNominalFrequenciesThereIsNoSpeed() {
        NamedTone unnamed = new NamedTone(1, Heard.tone(0, 9, 437, -20, -20), null, null);
        TapeSpeedReading speed = TapeSpeedReading.of(naming(false, unnamed), TapeQuestion.PLAIN);
        assertFalse(speed.deviation().isKnown());
        assertEquals(
                "It is not known what frequencies the tones should have: say --speed-tone or"
                        + " --tones.",
                speed.deviation().reason());
    }
}
