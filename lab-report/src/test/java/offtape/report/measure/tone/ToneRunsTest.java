package offtape.report.measure.tone;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ToneRunsTest {

    /** A tone has 0.7 of the power, may move by 2.5 %, lasts a second and is over −20 dB. */
    private static final ToneRange RANGE =
            new ToneRange(0.3, 100, 5000, 0.01, 1, 0.7, 0.025, 1, -20, 50);

    /** Blocks 0.1 s apart, of a search that begins at 7 s. */
    private final ToneRuns runs = new ToneRuns(7, 0.1, RANGE);

    private static ToneBlock tone(double hz) {
        return new ToneBlock(hz, 0.9, 0.1, 1, 0);
    }

    private void sound(int from, int to, double hz) {
        sound(from, to, tone(hz));
    }

    private void sound(int from, int to, ToneBlock block) {
        for (int i = from; i < to; i++) {
            runs.next(i, block, true);
        }
    }

    private void silence(int from, int to) {
        for (int i = from; i < to; i++) {
            runs.next(i, ToneBlock.EMPTY, false);
        }
    }

    private FoundTone only() {
        List<FoundTone> found = runs.found();
        assertEquals(1, found.size(), found.toString());
        return found.get(0);
    }

    private static void assertLies(double from, double to, FoundTone tone) {
        assertEquals(from, tone.fromSeconds(), 1e-9);
        assertEquals(to, tone.toSeconds(), 1e-9);
    }

    @Test
    void aToneLastsFromItsFirstBlockToTheEndOfItsLast() {
        silence(0, 5);
        sound(5, 20, 1000);
        sound(20, 25, 1012);
        silence(25, 40);
        FoundTone tone = only();
        assertLies(7.5, 9.5, tone);
        assertEquals((15 * 1000 + 5 * 1012) / 20.0, tone.frequencyHz(), 1e-9);
        assertEquals(1, tone.secondHz(), 0, "nothing sounds along");
        assertEquals(-120, tone.secondDb(), 0);
        assertEquals(0, tone.fadeDb(), 1e-9);
    }

    /** A second is ten blocks. */
    @ParameterizedTest
    @CsvSource({"10, 1", "9, 0"})
    void whatIsShortIsLeftOut(int blocks, int found) {
        sound(8, 8 + blocks, 1000);
        assertEquals(found, runs.found().size());
    }

    @Test
    void threeSpoiltBlocksDoNotEndATone() {
        sound(0, 10, 1000);
        silence(10, 13);
        sound(13, 20, 1000);
        assertLies(7, 9, only());
    }

    @Test
    void fourSpoiltBlocksDo() {
        sound(0, 10, 1000);
        silence(10, 14);
        sound(14, 24, 1000);
        List<FoundTone> found = runs.found();
        assertEquals(2, found.size());
        assertLies(7, 8, found.get(0));
        assertLies(8.4, 9.4, found.get(1));
    }

    /** 2.5 % up or down from its first block is the same tone, more is another. */
    @ParameterizedTest
    @CsvSource({"1024, 1", "1026, 2", "976, 1", "974, 2"})
    void anotherFrequencyIsAnotherTone(double hz, int tones) {
        sound(0, 10, 1000);
        sound(10, 20, hz);
        List<FoundTone> found = runs.found();
        assertEquals(tones, found.size());
        assertLies(7, tones == 1 ? 9 : 8, found.get(0));
        assertEquals(tones == 1 ? (1000 + hz) / 2 : 1000, found.get(0).frequencyHz(), 1e-9);
        assertEquals(tones == 1 ? (1000 + hz) / 2 : hz, found.get(tones - 1).frequencyHz(), 1e-9);
    }

    /** Two tones of nearly equal level take turns in being the louder: the lower is named. */
    @Test
    void ofTwoTonesTheLowerComesFirst() {
        for (int i = 0; i < 20; i++) {
            boolean lower = i % 2 == 0;
            runs.next(
                    i, new ToneBlock(lower ? 400 : 3000, 0.5, 0.1, lower ? 3000 : 400, 0.4), true);
        }
        FoundTone tone = only();
        assertEquals(400, tone.frequencyHz(), 1e-9);
        assertEquals(3000, tone.secondHz(), 1e-9);
        assertEquals(10 * Math.log10(0.8), tone.secondDb(), 1e-9);
    }

    /**
     * What sounds along is told by its mean, weighted by share: ten blocks of 0.1 at 2000 Hz and
     * ten of 0.05 at 2060 Hz make 2020 Hz, of 0.075 on average beside 0.9: −10.79 dB.
     */
    @Test
    void aSecondToneIsToldByItsShare() {
        sound(0, 10, new ToneBlock(1000, 0.9, 0.1, 2000, 0.1));
        sound(10, 20, new ToneBlock(1000, 0.9, 0.1, 2060, 0.05));
        FoundTone tone = only();
        assertEquals(2020, tone.secondHz(), 1e-9);
        assertEquals(10 * Math.log10(0.075 / 0.9), tone.secondDb(), 1e-9);
    }

    /** Half the blocks a share d above 2000 Hz, half as much below: the standard deviation is d. */
    @ParameterizedTest
    @CsvSource({"0.049, true", "0.051, false", "0.9, false"})
    void whatLiesNowHereNowThereIsNoSecondTone(double share, boolean steady) {
        sound(0, 10, new ToneBlock(1000, 0.9, 0.1, 2000 * (1 + share), 0.09));
        sound(10, 20, new ToneBlock(1000, 0.9, 0.1, 2000 * (1 - share), 0.09));
        FoundTone tone = only();
        assertEquals(2000, tone.secondHz(), 1e-9);
        assertEquals(steady ? -10 : -120, tone.secondDb(), 1e-9);
    }

    /**
     * Ten blocks of power 1, ten of 0.1: 0.55 on average. The latest level moves a fifth of the way
     * with each block: 0.1 + 0.9·0.8¹⁰ = 0.19664 at the end, 4.467 dB less than the mean.
     */
    @Test
    void aToneThatFadesIsTold() {
        sound(0, 10, new ToneBlock(1000, 0.9, 1, 1, 0));
        sound(10, 20, new ToneBlock(1000, 0.9, 0.1, 1, 0));
        assertEquals(
                10 * Math.log10(0.55 / (0.1 + 0.9 * Math.pow(0.8, 10))), only().fadeDb(), 1e-9);
    }

    /** Each tone is told for itself: nothing of one is left in the next. */
    @Test
    void tonesDoNotMix() {
        sound(0, 10, new ToneBlock(1000, 0.9, 1, 3000, 0.09));
        sound(10, 20, new ToneBlock(500, 0.8, 0.1, 1500, 0.008));
        FoundTone second = runs.found().get(1);
        assertLies(8, 9, second);
        assertEquals(500, second.frequencyHz(), 1e-9);
        assertEquals(1500, second.secondHz(), 1e-9);
        assertEquals(-20, second.secondDb(), 1e-9);
        assertEquals(0, second.fadeDb(), 1e-9);
    }

    /** Of more than a thousand tones the shortest go. */
    @Test
    void aThousandTonesAreKept() {
        int at = 0;
        for (int k = 0; k < 1002; k++) {
            int blocks = k == 300 || k == 1001 ? 10 : 11;
            sound(at, at + blocks, 1000);
            silence(at + blocks, at + blocks + 4);
            at += blocks + 4;
            if (k == 999) {
                assertTrue(runs.found().stream().anyMatch(t -> t.seconds() < 1.05));
                assertEquals(1000, runs.found().size(), "none has gone yet");
            }
        }
        List<FoundTone> found = runs.found();
        assertEquals(1000, found.size());
        assertFalse(found.stream().anyMatch(t -> t.seconds() < 1.05));
        for (int k = 1; k < found.size(); k++) {
            assertTrue(found.get(k).fromSeconds() > found.get(k - 1).toSeconds());
        }
    }

    /** 0.7 of the power and −20 dB re a full-scale sine, a mean square of 0.005. */
    @ParameterizedTest
    @CsvSource({
        "0.71, 0.0051, 0.2, true, false",
        "0.71, 0.0049, 0.2, false, false",
        "0.69, 0.0051, 0.12, false, true",
        "0.69, 0.0049, 0.12, false, false",
        "0.69, 0.0051, 0.1, false, false",
        "0.5, 0.0051, 0.31, false, true"
    })
    void aToneRulesAndTwoTonesRuleTogether(
            double share, double power, double second, boolean tone, boolean pair) {
        ToneBlock block = new ToneBlock(1000, share, power, 2000, second);
        assertEquals(tone, block.isTone(RANGE));
        assertEquals(pair, block.isPair(RANGE));
        assertFalse(ToneBlock.EMPTY.isTone(RANGE));
        assertFalse(ToneBlock.EMPTY.isPair(RANGE));
    }

    @Test
    void standingSoundsMayBeLetIn() {
        assertEquals(
                new ToneRange(0.3, 100, 5000, 0.01, 1, 0.7, 0.025, 1, -20, 0),
                RANGE.withStanding());
        assertEquals(0.005, RANGE.silentPower(), 1e-12);
    }
}
