package offtape.report.measure.tape;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import offtape.core.standard.TimeConstants;
import offtape.core.tape.ListedTone;
import offtape.core.tape.ToneList;
import org.junit.jupiter.api.Test;

/** A tone, and what it was taken for. */
class NamedToneTest {

    /** 1010 Hz ± 0.101 Hz, by a clock that is known within 50 ppm, 0.0505 Hz. */
    private static final HeardTone HEARD = Heard.tone(1, 1010, -20);

    @Test
    void theClockCountsInFrequencyAndSpeed() {
        NamedTone tone = new NamedTone(3, HEARD, 1000.0, null);
        double doubt = Math.hypot(0.101, 0.0505);
        assertEquals(1010, tone.frequency().value(), 0);
        assertEquals("Hz", tone.frequency().unit());
        assertEquals(doubt, tone.frequency().uncertainty(), 1e-12);
        assertEquals(1, tone.deviation().value(), 1e-12);
        assertEquals("%", tone.deviation().unit());
        assertEquals(0.1 * doubt, tone.deviation().uncertainty(), 1e-12);
        assertEquals(0.0101, tone.ownUncertainty(), 1e-12);
        assertEquals(1000, tone.aboutHz(), 0);
    }

    @Test
    void aToneOfNoListHasNoDeviation() {
        NamedTone tone = new NamedTone(3, HEARD, null, null);
        assertEquals(1010, tone.aboutHz(), 0);
        assertEquals(
                "It is not known what frequency the tone should have.", tone.deviation().reason());
        assertNull(tone.recordedDb());
        assertFalse(tone.isFor(ListedTone.Purpose.SPEED));
    }

    @Test
    void theListSaysLevelAndPurpose() {
        ListedTone listed = Heard.listed(1000, -7.5, ListedTone.Purpose.AZIMUTH);
        NamedTone tone = new NamedTone(3, HEARD, 1000.0, listed);
        assertEquals(-7.5, tone.recordedDb());
        assertTrue(tone.isFor(ListedTone.Purpose.AZIMUTH));
        assertFalse(tone.isFor(ListedTone.Purpose.SPEED));
    }

    /** Of two channels the louder counts, and one that is not heard does not. */
    @Test
    void theLoudestChannelIsTheTones() {
        assertEquals(-12, Heard.tone(0, 2, 1000, -15, -12).loudestDb(), 0);
        assertEquals(-15, Heard.tone(0, 2, 1000, -15, Double.NaN).loudestDb(), 0);
        assertEquals(Double.NEGATIVE_INFINITY, Heard.tone(0, 2, 1000, Double.NaN).loudestDb(), 0);
        assertEquals(2.5, Heard.tone(7, 2.5, 1000, -3).seconds(), 1e-12);
    }

    private static ToneList list(String speed, String equalisation) {
        return new ToneList(
                ToneList.FORMAT,
                1,
                null,
                null,
                speed,
                equalisation,
                null,
                java.util.List.of(Heard.listed(1000, null, null)));
    }

    /** What is said goes before what the list says. */
    @Test
    void whatIsSaidGoesBeforeTheList() {
        TimeConstants said = TimeConstants.parse("none,70");
        TapeQuestion both =
                new TapeQuestion(list("9.5cm/s", "3180,120"), null, said, null, 190.5, null);
        assertEquals(said, both.tapeConstants());
        assertEquals(190.5, both.mmPerS());
        TapeQuestion byList =
                new TapeQuestion(list("19.05cm/s", "3180,120"), null, null, null, null, null);
        assertEquals(TimeConstants.parse("3180,120"), byList.tapeConstants());
        assertEquals(190.5, byList.mmPerS());
        TapeQuestion silent = new TapeQuestion(list(null, null), null, null, null, null, null);
        assertNull(silent.tapeConstants());
        assertNull(silent.mmPerS());
        assertNull(TapeQuestion.PLAIN.tapeConstants());
        assertNull(TapeQuestion.PLAIN.mmPerS());
        TapeQuestion only = new TapeQuestion(null, null, said, null, 95.3, null);
        assertEquals(said, only.tapeConstants());
        assertEquals(95.3, only.mmPerS());
    }
}
