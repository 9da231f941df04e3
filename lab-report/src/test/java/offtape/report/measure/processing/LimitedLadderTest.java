package offtape.report.measure.processing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import offtape.report.result.HealthNote;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Where what a tone loses is more than its distortion lets expect, to the tenth of a decibel. */
class LimitedLadderTest {

    /** Six steps of a wire whose last two come back lower, with harmonics below a bound. */
    private static Ladders wire(double beforeDb, double topDb, Double thdBelow, Double doubtDb) {
        Ladders ladder = new Ladders();
        for (int i = 0; i < 4; i++) {
            ladder.quiet(-10 + 5 * i, 0, thdBelow, doubtDb);
        }
        return ladder.quiet(10, -beforeDb, thdBelow, doubtDb).quiet(15, -topDb, thdBelow, doubtDb);
    }

    /**
     * Without harmonics everything is unexplained: more than 1 dB at the top, half of it before.
     * With 2 % at most tape may lose 8 times as much, 20·lg(1 − 0.16) = −1.51 dB. Levels that are
     * known within 0.3 dB each are known within 0.42 dB against each other.
     */
    @ParameterizedTest
    @CsvSource({
        "0.6, 1.1, 0, 0, true",
        "0.6, 0.9, 0, 0, false",
        "0.4, 1.1, 0, 0, false",
        "2.1, 2.6, 2, 0, true",
        "2.1, 2.4, 2, 0, false",
        "1.9, 2.6, 2, 0, false",
        "1.1, 1.5, 0, 0.3, true",
        "1.1, 1.4, 0, 0.3, false",
        "0.6, 1.1, , 0, false",
        // a level that is known to be exact, and one of which nothing is said
        "0.6, 1.1, 0, , true",
        // 12.5 % and more explain what is lost down to 20·lg 0.01 = −40 dB
        "40.6, 40.9, 13, 0, false",
        "40.6, 41.1, 13, 0, true",
    })
    void aWireThatLosesADecibelIsHeldDown(
            double beforeDb, double topDb, Double thdBelow, Double doubtDb, boolean told) {
        assertEquals(
                told,
                GainWithoutDistortion.in(wire(beforeDb, topDb, thdBelow, doubtDb).at(1000))
                        .isPresent());
    }

    @Test
    void itIsSaidWhereAndByHowMuch() {
        HealthNote note =
                GainWithoutDistortion.in(wire(2, 3.25, 0.5, 0.0).at(315, "right")).orElseThrow();
        assertEquals("warning gain-follows-level", note.severity() + " " + note.code());
        String words = note.message();
        assertTrue(
                words.startsWith(
                        "At +15 dB the ladder at 315 Hz comes back 3.3 dB lower on the right"
                                + " channel than its lowest step lets expect, with 0.50 % of"
                                + " distortion"),
                words);
    }

    /** From 1.5 kHz on the third harmonic lies where tape falls off. */
    @ParameterizedTest
    @CsvSource({"1500, true", "1501, false", "10000, false"})
    void onlyLowLaddersTellIt(double hz, boolean told) {
        assertEquals(told, GainWithoutDistortion.in(wire(2, 3, 0.0, 0.0).at(hz)).isPresent());
    }

    /** Six steps that were heard are asked for. */
    @Test
    void fewStepsTellNothing() {
        Ladders five = new Ladders().unheard(-20);
        for (int i = 0; i < 5; i++) {
            five.quiet(-10 + 5 * i, -i, 0.0, 0.0);
        }
        assertTrue(GainWithoutDistortion.in(five.at(1000)).isEmpty());
        assertTrue(GainWithoutDistortion.in(five.quiet(15, -5, 0.0, 0.0).at(1000)).isPresent());
        assertTrue(GainWithoutDistortion.in(new Ladders().at(1000)).isEmpty());
    }

    /** A limiter never lets more through again: 0.3 dB are what a level may waver. */
    @ParameterizedTest
    @CsvSource({
        "3, 3, 2.8, true",
        "3, 3, 2.6, false",
        "3.2, 3, 3, true",
        "3.4, 3, 3, false",
    })
    void theGainMustNotRiseAgain(double thirdDb, double secondDb, double topDb, boolean told) {
        Ladders ladder = new Ladders();
        for (int i = 0; i < 3; i++) {
            ladder.quiet(-10 + 5 * i, 0, 0.0, 0.0);
        }
        ladder.quiet(5, -thirdDb, 0.0, 0.0)
                .quiet(10, -secondDb, 0.0, 0.0)
                .quiet(15, -topDb, 0.0, 0.0);
        assertEquals(told, GainWithoutDistortion.in(ladder.at(1000)).isPresent());
    }

    private static double lostDb(double share) {
        return -20 * Math.log10(1 - share);
    }

    /**
     * The lowest three clear steps lose 2, 4 and 9 times their K3 of 0.5 %, so up to 1.2 · 4 times
     * its K3 of 5 % the top may lose: 20·lg(1 − 0.24) = −2.38 dB. The step after them, which loses
     * half of its K3, is not asked.
     */
    @ParameterizedTest
    @CsvSource({"3.5, true", "3.3, false"})
    void theLowerStepsTellWhatTheTapeLoses(double topDb, boolean told) {
        Ladders ladder = new Ladders().loud(-12, 0, 0.001, 0.001);
        double[] times = {4, 2, 9, 0.5};
        for (int i = 0; i < times.length; i++) {
            ladder.loud(-9 + 2 * i, -lostDb(0.005 * times[i]), 0.5, 0.5);
        }
        ladder.loud(7, -3.2, 5, 6).loud(9, -topDb, 5, 6);
        assertEquals(told, GainWithoutDistortion.in(ladder.at(1000)).isPresent());
    }

    /**
     * Three times K3 is always allowed, as a square wave has it: of 10 %, 20·lg(1 − 0.3) = −3.10
     * dB, though the lower steps lose as much as their K3 only.
     */
    @ParameterizedTest
    @CsvSource({"4.2, true", "4.0, false"})
    void threeTimesK3IsAlwaysAllowed(double topDb, boolean told) {
        Ladders ladder = new Ladders().loud(-12, 0, 0.001, 0.001);
        for (int i = 0; i < 3; i++) {
            ladder.loud(-9 + 2 * i, -lostDb(0.01), 1, 1);
        }
        ladder.loud(7, -3.9, 10, 10).loud(9, -topDb, 10, 10);
        assertEquals(told, GainWithoutDistortion.in(ladder.at(1000)).isPresent());
    }

    /**
     * Steps count as telling from 6 dB below, with K3 over 0.3 % that stands clear, and a loss of
     * more than 4 · √2 times the uncertainty of a level. Only with three of them does the top,
     * which loses 4 dB with K3 of 5 % and 6 % in all, stand out: of 3 · K3, which explain 1.4 dB,
     * not of 8 times all harmonics, which explain 5.7 dB.
     */
    @ParameterizedTest
    @CsvSource({
        "3, 0.5, 0.05, true",
        "3.1, 0.5, 0.05, false",
        "3, 0.31, 0.05, true",
        "3, 0.29, 0.05, false",
        "3, 0.5, 0.17, true",
        "3, 0.5, 0.18, false",
    })
    void onlyClearStepsTellIt(double thirdDb, double k3, double doubt, boolean told) {
        double lost = 0.1;
        double u = doubt * lost;
        Ladders ladder = new Ladders().loud(-12, 0, 0.001, 0.001, u);
        ladder.loud(-9, -lost, k3, k3, u).loud(-6, -lost, k3, k3, u);
        ladder.loud(thirdDb, -lost, k3, k3, u);
        ladder.loud(7, -4, 0.5, 1).loud(9, -4, 5, 6);
        assertEquals(told, GainWithoutDistortion.in(ladder.at(1000)).isPresent());
    }

    /** A third harmonic that does not stand out of its floor of 0.0001 % tells nothing. */
    @Test
    void aStepOfWhichNoHarmonicsAreToldIsNotAsked() {
        Ladders ladder = new Ladders().loud(-12, 0, 0.001, 0.001);
        ladder.loud(-9, -0.1, 0.5, 0.5).loud(-6, -0.1, 0.5, 0.5).quiet(3, -0.1, 0.5, 0.0);
        ladder.loud(7, -4, 0.5, 1).loud(9, -4, 5, 6);
        assertTrue(GainWithoutDistortion.in(ladder.at(1000)).isEmpty());
    }
}
