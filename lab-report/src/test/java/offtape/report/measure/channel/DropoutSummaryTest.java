package offtape.report.measure.channel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.report.result.DropoutSummary;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which tones are searched, and what is told of all dropouts together. */
class DropoutSummaryTest {

    private static LongTone tone(double seconds) {
        return new LongTone(8000, 2000, seconds);
    }

    /**
     * Of 900 Hz to 12.5 kHz, at most 30 dB under reference, 4 s long, on both channels; less 50 ms
     * at both ends.
     */
    @ParameterizedTest
    @CsvSource({
        "BOTH, 4, 900, -30, 3.9",
        "BOTH, 4, 12500, 0, 3.9",
        "BOTH, 3.99, 3150, 0, 0",
        "BOTH, 4, 899, 0, 0",
        "BOTH, 4, 12600, 0, 0",
        "BOTH, 4, 3150, -31, 0",
        "LEFT, 4, 3150, 0, 0"
    })
    void longHighAndLoudTonesAreSearched(
            ChannelSet side, double seconds, double hz, double levelDb, double searched) {
        long frames = Pair.at(seconds);
        Cue tone = new Cue.Tone("tone", side, Pair.at(0.1), frames, hz, levelDb);
        DropoutSummary summary = DropoutSearch.find(Pair.of(tone).play()).summary();
        assertEquals(searched, summary.searchedSeconds(), 1e-3);
        assertEquals(searched > 0, summary.perMinute().isKnown());
    }

    /** Two tones, of which one channel returns: the longer search counts, not both channels'. */
    @Test
    void theSecondsOfAllTonesAreAdded() {
        Cue one = new Cue.Tone("one", ChannelSet.BOTH, Pair.at(0.1), Pair.at(4), 2000, 0);
        Cue two = new Cue.Tone("two", ChannelSet.BOTH, Pair.at(4.2), Pair.at(5), 3000, 0);
        DropoutSummary both = DropoutSearch.find(Pair.of(one, two).play()).summary();
        assertEquals(8.8, both.searchedSeconds(), 1e-3);
        DropoutSummary right = DropoutSearch.find(Pair.of(one, two).gains(0, 1).play()).summary();
        assertEquals(8.8, right.searchedSeconds(), 1e-3);
    }

    /** None in 5.9 s: one is allowed for, 2 · 1 in 5.9 s. */
    @Test
    void noDropoutIsARateOfZero() {
        DropoutSummary none = DropoutSearch.find(tone(6).play(1)).summary();
        assertEquals(0, none.perMinute().value());
        assertEquals(2 / (5.9 / 60), none.perMinute().uncertainty(), 0.01);
        assertEquals("No dropout of 3 dB and 10 ms was found.", none.deepest().reason());
        assertEquals(none.deepest(), none.longest());
    }

    /**
     * Five places in 5.9 s: 5/5.9 · 60 = 50.85 a minute, and twice √5 of them are 45.48. The
     * deepest is known within 0.3 dB, the longest within a tenth, but a millisecond at least.
     */
    @Test
    void rateDepthAndLength() {
        LongTone tone =
                tone(6).damage(new LongTone.Damage(0, 1, 0.05, 10, 0))
                        .damage(new LongTone.Damage(1, 2, 0.03, 20, 0))
                        .damage(new LongTone.Damage(0, 3, 0.1, 6, 0))
                        .damage(new LongTone.Damage(0, 4, 0.05, 10, 0))
                        .damage(new LongTone.Damage(1, 4.01, 0.05, 10, 0))
                        .damage(new LongTone.Damage(1, 5, 0.03, 10, 0));
        DropoutSummary found = DropoutSearch.find(tone.play(1)).summary();
        assertEquals(50.85, found.perMinute().value(), 0.05);
        assertEquals(45.48, found.perMinute().uncertainty(), 0.05);
        assertEquals("1/min", found.perMinute().unit());
        assertEquals(20, found.deepest().value(), 0.3);
        assertEquals(0.3, found.deepest().uncertainty());
        assertEquals(100, found.longest().value(), 1);
        assertEquals(0.1 * found.longest().value(), found.longest().uncertainty(), 1e-9);
        assertEquals("ms", found.longest().unit());
    }

    @Test
    void aShortOneIsKnownWithinAMillisecond() {
        LongTone tone = tone(5).damage(new LongTone.Damage(0, 2, 0.012, 20, 0));
        DropoutSummary found = DropoutSearch.find(tone.play(1)).summary();
        // its 3 dB lie outside the middle of its soft edges
        assertEquals(12, found.longest().value(), 1.1);
        assertTrue(found.longest().value() * 0.1 < 2);
        assertEquals(
                Math.max(1, 0.1 * found.longest().value()), found.longest().uncertainty(), 1e-9);
    }

    /** Losses on both channels that only touch are two places. */
    @Test
    void onlyWhatIsLostTogetherIsCommon() {
        LongTone tone =
                tone(5).damage(new LongTone.Damage(0, 2, 0.05, 10, 0))
                        .damage(new LongTone.Damage(1, 2.055, 0.05, 10, 0))
                        .damage(new LongTone.Damage(1, 3, 0.05, 10, 0))
                        .damage(new LongTone.Damage(0, 3.045, 0.05, 10, 0));
        var found = DropoutSearch.find(tone.play(1)).dropouts();
        assertEquals(4, found.size());
        assertFalse(found.get(0).common());
        assertFalse(found.get(1).common());
        assertTrue(found.get(2).common());
        assertTrue(found.get(3).common());
        assertEquals("right", found.get(2).channel());
        assertEquals("left", found.get(3).channel());
    }
}
