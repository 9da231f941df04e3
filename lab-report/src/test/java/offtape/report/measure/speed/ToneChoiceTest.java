package offtape.report.measure.speed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import offtape.core.fault.UnusableInputException;
import offtape.report.measure.tone.FoundTone;
import offtape.report.measure.tone.ToneSearch;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which tone is read and what is said, from lists of tones alone. */
class ToneChoiceTest {

    private static final double NONE_DB = -200;

    private static FoundTone tone(double from, double to, double hz) {
        return new FoundTone(from, to, hz, 0, NONE_DB, 0);
    }

    private static ToneChoice choice(FoundTone... tones) {
        return choice(OptionalDouble.empty(), tones);
    }

    private static ToneChoice named(double hz, FoundTone... tones) {
        return choice(OptionalDouble.of(hz), tones);
    }

    private static ToneChoice choice(OptionalDouble named, FoundTone... tones) {
        return ToneChoice.from(new ToneSearch(List.of(tones), List.of()), named, "side-a.wav");
    }

    private static String refusal(
            OptionalDouble named, List<FoundTone> tones, List<FoundTone> pairs) {
        ToneSearch search = new ToneSearch(tones, pairs);
        return assertThrows(
                        UnusableInputException.class,
                        () -> ToneChoice.from(search, named, "side-a.wav"))
                .getMessage();
    }

    @Test
    void aToneForFlutterGoesBeforeALongerUsualOneAndThatBeforeAnyOther() {
        FoundTone flutter = tone(0, 6, 3000);
        FoundTone usual = tone(6, 20, 1000);
        FoundTone other = tone(20, 60, 700);
        assertEquals(flutter, choice(usual, flutter, other).tone());
        assertEquals(3000, choice(usual, flutter, other).nominalHz());
        assertEquals(usual, choice(other, usual).tone());
        assertEquals(1000, choice(other, usual).nominalHz());
    }

    @Test
    void theLongestOfItsKindIsTaken() {
        FoundTone longest = tone(7, 16, 3150);
        assertEquals(longest, choice(tone(0, 6, 3150), longest, tone(17, 24, 3150)).tone());
    }

    @Test
    void fiveSecondsAreEnoughAndLessIsNot() {
        assertEquals(5, choice(tone(1, 6, 3150)).tone().seconds());
        assertEquals(
                "No steady tone of five seconds or more between 300 Hz and 12 kHz was found in"
                        + " side-a.wav. The longest tone heard has 3150 Hz and lasts 4.9 s. Record"
                        + " the tone alone, half a minute or more, without speech or music over it.",
                refusal(
                        OptionalDouble.empty(),
                        List.of(tone(0, 2, 1000), tone(2, 6.9, 3150)),
                        List.of()));
    }

    /** A quarter to either side: 3150 / 1.25 = 2520 Hz, 3150 · 1.25 = 3937.5 Hz. */
    @Test
    void aNamedToneMayBeAQuarterOff() {
        FoundTone slow = tone(0, 8, 2521);
        FoundTone slower = tone(9, 30, 2519);
        ToneChoice choice = named(3150, slower, slow, tone(30, 60, 3939));
        assertEquals(slow, choice.tone());
        assertEquals(3150, choice.nominalHz());
        assertEquals(tone(0, 9, 3937), named(3150, tone(0, 9, 3937)).tone());
        assertEquals(
                "No steady tone of five seconds or more near 3150 Hz was found in side-a.wav. The"
                        + " longest tone heard has 2519 Hz and lasts 21.0 s. Record the tone alone,"
                        + " half a minute or more, without speech or music over it.",
                refusal(OptionalDouble.of(3150), List.of(slower), List.of()));
    }

    @Test
    void anOddToneIsAskedFor() {
        assertEquals(
                "The tone in side-a.wav has 700.0 Hz, which is near no usual test tone. Say with"
                        + " --frequency what it should have.",
                refusal(OptionalDouble.empty(), List.of(tone(0, 9, 700)), List.of()));
        assertEquals(700, named(700, tone(0, 9, 700)).nominalHz());
        assertEquals(
                "The tone in side-a.wav has 6300.0 Hz, which is near no usual test tone. It could be"
                        + " 3150 Hz at twice the speed. Say with --frequency what it should have.",
                refusal(OptionalDouble.empty(), List.of(tone(0, 9, 6300)), List.of()));
    }

    @Test
    void twoTonesAtOnceAreNamedIfTheyLastAndSilenceIsNot() {
        List<FoundTone> five = List.of(new FoundTone(0, 5, 1000, 3150, -1, 0));
        List<FoundTone> brief = List.of(new FoundTone(0, 4.9, 1000, 3150, -1, 0));
        String none =
                "No steady tone of five seconds or more between 300 Hz and 12 kHz was found in"
                        + " side-a.wav.";
        String alone =
                " Record the tone alone, half a minute or more, without speech or music over it.";
        assertEquals(
                none + " Two tones sound at once, 1000 Hz and 3150 Hz, and neither rules." + alone,
                refusal(OptionalDouble.empty(), List.of(), five));
        assertEquals(none + alone, refusal(OptionalDouble.empty(), List.of(), brief));
    }

    /**
     * The band of 3150 Hz stops at 1.7 · (220 + 0.012 · 3150) = 438.26 Hz. A second tone within it
     * disturbs from −30 dB on; farther away it is named from −40 dB on.
     */
    @ParameterizedTest
    @CsvSource({
        "3588, -29.9, refused",
        "2712, -29.9, refused",
        "3588, -30, '30'",
        "3589, -29.9, '30'",
        "2711, -20, '20'",
        "3589, -39.9, '40'",
        "3589, -40, ''",
    })
    void aSecondToneIsRefusedNamedOrPassedOver(double hz, double db, String outcome) {
        FoundTone found = new FoundTone(0, 9, 3150, hz, db, 0);
        if (outcome.equals("refused")) {
            assertEquals(
                    String.format(
                            "Another tone of %.0f Hz sounds along with the tone of 3150 Hz in"
                                    + " side-a.wav and cannot be told from flutter. Record one tone"
                                    + " alone.",
                            hz),
                    refusal(OptionalDouble.empty(), List.of(found), List.of()));
        } else {
            String note =
                    String.format(
                            "Another tone of %.0f Hz sounds along, %s dB lower; it is far enough"
                                    + " away not to disturb.",
                            hz, outcome);
            assertEquals(outcome.isEmpty() ? List.of() : List.of(note), choice(found).notes());
        }
    }

    @Test
    void aFadeOfMoreThanSixDecibelsIsTold() {
        assertEquals(List.of(), choice(new FoundTone(0, 9, 3150, 0, NONE_DB, 6)).notes());
        assertEquals(
                List.of(
                        "The tone fades: at its end, at 9.0 s, it lies 7 dB below its mean level,"
                                + " and what follows is not read."),
                choice(new FoundTone(0, 9, 3150, 0, NONE_DB, 6.6)).notes());
    }

    /** What lies within 5 % is the same tone again: 3150 · 1.05 = 3307.5 Hz. */
    @Test
    void stretchesOfTheSameToneAreCountedAndOtherTonesAreNamed() {
        ToneChoice choice =
                choice(
                        tone(0, 3, 3150),
                        tone(4, 12, 3151),
                        tone(13, 15, 3307),
                        tone(15, 17, 3310),
                        tone(18, 20, 1000),
                        tone(21, 22, 1000.4));
        assertEquals(
                List.of(
                        "The tone sounds in 3 stretches; the longest was read, from 4.0 s to 12.0"
                                + " s. --from and --to choose another.",
                        "Other tones in the recording: 3310 Hz, 1000 Hz. --frequency chooses"
                                + " another."),
                choice.notes());
        assertEquals(List.of(), choice(tone(0, 9, 3150)).notes());
    }

    @Test
    void noMoreThanSixOtherTonesAreNamed() {
        FoundTone[] tones = new FoundTone[8];
        Arrays.setAll(tones, i -> tone(10 + i, 10.9 + i, 500 + 100 * i));
        tones[7] = tone(0, 8, 3150);
        assertEquals(
                List.of(
                        "Other tones in the recording: 500 Hz, 600 Hz, 700 Hz, 800 Hz, 900 Hz, 1000"
                                + " Hz and more. --frequency chooses another."),
                choice(tones).notes());
        assertEquals(
                List.of(
                        "Other tones in the recording: 600 Hz, 700 Hz, 800 Hz, 900 Hz, 1000 Hz,"
                                + " 1100 Hz. --frequency chooses another."),
                choice(Arrays.copyOfRange(tones, 1, 8)).notes());
    }

    @Test
    void aToneBetweenTwoUsualOnesIsDoubtedUnlessItsFrequencyWasNamed() {
        assertEquals(
                List.of(
                        "A tone of 3060 Hz was taken for 3000 Hz; if it should have 3150 Hz, say so"
                                + " with --frequency."),
                choice(tone(0, 9, 3060)).notes());
        assertEquals(List.of(), named(3150, tone(0, 9, 3060)).notes());
    }
}
