package offtape.report.measure.processing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import offtape.report.result.HealthNote;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Ladders of the highs, three decibels a step, by what each six of them lose. */
class FallingHighsTest {

    private static Ladders ladder(double firstDb, double secondDb, double doubtDb) {
        double middle = 1 - firstDb;
        double upper = middle - secondDb;
        return new Ladders()
                .quiet(-20, 1, 0.0, doubtDb)
                .quiet(-17, 1 - firstDb / 2, 0.0, doubtDb)
                .quiet(-14, middle, 0.0, doubtDb)
                .quiet(-11, middle - secondDb / 2, 0.0, doubtDb)
                .quiet(-8, upper, 0.0, doubtDb)
                .quiet(-5, upper, 0.0, doubtDb);
    }

    /**
     * Tape loses two to four times as much over the second 6 dB as over the first; what is told
     * loses 0.8 to 2.5 dB over the first and half to one and a half of that over the second, by
     * more than √2 times the uncertainty of a level.
     */
    @ParameterizedTest
    @CsvSource({
        "1.5, 1.5, 0, true",
        "1.5, 3, 0, false",
        "1.5, 2.3, 0, false",
        "1.5, 2.2, 0, true",
        "1.5, 0.8, 0, true",
        "1.5, 0.7, 0, false",
        "0.85, 0.8, 0, true",
        "0.75, 0.8, 0, false",
        "2.4, 2.4, 0, true",
        "2.6, 2.6, 0, false",
        // 1.5 less 0.42 · 1.414 are 0.906, of which one and a half are 1.359
        "1.5, 1.35, 0.42, true",
        "1.5, 1.37, 0.42, false",
        // and less 0.5 · 1.414 are 0.793
        "1.5, 1.1, 0.5, false",
    })
    void whatFallsFromTheQuietestStepOnIsLifted(
            double firstDb, double secondDb, double doubtDb, boolean told) {
        assertEquals(
                told, FallingHighs.in(ladder(firstDb, secondDb, doubtDb).at(10_000)).isPresent());
    }

    @Test
    void itIsSaidWhereAndByHowMuch() {
        HealthNote note = FallingHighs.in(ladder(1.5, 1.2, 0).at(8000, "right")).orElseThrow();
        assertEquals("warning noise-reduction", note.severity() + " " + note.code());
        assertTrue(
                note.message()
                        .startsWith(
                                "Quiet highs are lifted on the right channel: at 8000 Hz the gain"
                                        + " falls by 1.5 dB from -20 to -14 dB and by no more than"
                                        + " 1.2 dB from there to -8 dB"),
                note.message());
    }

    @ParameterizedTest
    @CsvSource({"4000, true", "3999, false", "1000, false"})
    void onlyLaddersOfTheHighsTellIt(double hz, boolean told) {
        assertEquals(told, FallingHighs.in(ladder(1.5, 1.5, 0).at(hz)).isPresent());
    }

    /** A step that comes back as strong as the one before it is no steady fall. */
    @ParameterizedTest
    @CsvSource({"-17, 1", "-17, -0.6", "-11, -0.5", "-11, -2.1", "-8, -1.2"})
    void aDropoutIsNone(double recordDb, double gainDb) {
        Ladders ladder = new Ladders();
        double[][] steps = {{-20, 1}, {-17, 0.3}, {-14, -0.5}, {-11, -1.2}, {-8, -2}};
        for (double[] s : steps) {
            ladder.quiet(s[0], s[0] == recordDb ? gainDb : s[1], 0.0, 0.0);
        }
        assertTrue(FallingHighs.in(ladder.at(10_000)).isEmpty());
    }

    /** Steps that were not heard are passed over: the lowest that was is where it begins. */
    @Test
    void itBeginsWithTheLowestStepThatWasHeard() {
        Ladders ladder = new Ladders().unheard(-23).unheard(-20);
        double[] gains = {1, 0.3, -0.5, -1.2, -2};
        for (int i = 0; i < gains.length; i++) {
            ladder.quiet(-17 + 3 * i, gains[i], 0.0, null);
        }
        String words = FallingHighs.in(ladder.at(10_000)).orElseThrow().message();
        assertTrue(words.contains("from -17 to -11 dB"), words);
    }

    /** Without a step 6 and 12 dB above the lowest the two stretches are not there. */
    @Test
    void bothStretchesMustBeThere() {
        assertTrue(FallingHighs.in(new Ladders().at(10_000)).isEmpty());
        Ladders ladder = new Ladders().quiet(-20, 1, 0.0, 0.0).quiet(-14.02, -0.5, 0.0, 0.0);
        assertTrue(FallingHighs.in(ladder.quiet(-8, -2, 0.0, 0.0).at(10_000)).isEmpty());
        Ladders near = new Ladders().quiet(-20, 1, 0.0, 0.0).quiet(-14.005, -0.5, 0.0, 0.0);
        assertTrue(FallingHighs.in(near.at(10_000)).isEmpty());
        assertTrue(FallingHighs.in(near.quiet(-8.02, -2, 0.0, 0.0).at(10_000)).isEmpty());
        assertTrue(FallingHighs.in(near.quiet(-7.995, -2, 0.0, 0.0).at(10_000)).isPresent());
    }
}
