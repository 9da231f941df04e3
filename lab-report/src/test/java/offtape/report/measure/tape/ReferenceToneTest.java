package offtape.report.measure.tape;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import offtape.core.tape.ListedTone;
import offtape.report.result.TapeReference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which tone is the zero of levels. */
class ReferenceToneTest {

    /** 1 kHz goes before 315 Hz and that before 400 Hz; of two the first. */
    @Test
    void theMostUsualFrequencyIsTaken() {
        TapeReference taken = ReferenceTone.of(Heard.named(400, 315, 10_000, 1000, 1000)).record();
        assertEquals(
                new TapeReference(
                        4, 1000, "It is the first tone of a frequency that level is set with."),
                taken);
        assertEquals(2, ReferenceTone.of(Heard.named(400, 315, 10_000)).tone().number());
        assertEquals(3, ReferenceTone.of(Heard.named(700, 500, 333)).tone().number());
    }

    @Test
    void theListGoesBefore() {
        List<NamedTone> tones =
                List.of(
                        Heard.named(1000).get(0),
                        new NamedTone(
                                2,
                                Heard.tone(3, 8000, -10),
                                8000.0,
                                Heard.listed(8000, null, ListedTone.Purpose.REFERENCE)));
        assertEquals(
                new TapeReference(2, 8000, "The list marks it as the reference."),
                ReferenceTone.of(tones).record());
    }

    @Test
    void elseTheStrongestIs() {
        List<NamedTone> tones =
                List.of(
                        new NamedTone(1, Heard.tone(0, 8000, -10), 8000.0, null),
                        new NamedTone(2, Heard.tone(3, 4000, -5), null, null),
                        new NamedTone(3, Heard.tone(6, 2000, -7), 2000.0, null));
        TapeReference taken = ReferenceTone.of(tones).record();
        assertEquals(2, taken.tone());
        assertEquals(4000, taken.frequencyHz(), 0);
        assertTrue(taken.because().startsWith("It is the strongest tone"), taken.because());
    }

    /** Within 3 % in the logarithm to either side. */
    @ParameterizedTest
    @CsvSource({
        "1000, true", "1030, true", "1031, false", "971, true", "970, false", "315, true",
        "333, true", "400, true", "500, true", "700, true", "600, false", "630, false"
    })
    void frequenciesThatLevelIsSetWith(double hz, boolean isOne) {
        if (isOne) {
            assertTrue(ReferenceTone.isForLevel(Heard.named(hz).get(0)));
        } else {
            assertFalse(ReferenceTone.isForLevel(Heard.named(hz).get(0)));
        }
    }
}
