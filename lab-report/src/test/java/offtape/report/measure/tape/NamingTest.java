package offtape.report.measure.tape;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import offtape.core.fault.UnusableInputException;
import offtape.core.tape.ListedTone;
import offtape.core.tape.ToneList;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What tones are taken for, and what is said of it. */
class NamingTest {

    private static final String AT_HALF =
            "The tones fit at half the speed: the tape was replayed at half the speed it was"
                    + " recorded at, or copied so. Levels and response are then not those of the"
                    + " right speed.";

    private static Naming named(Double speedToneHz, double... hz) {
        TapeQuestion question = new TapeQuestion(null, speedToneHz, null, null, null, null);
        return Naming.of(Heard.tones(hz), question, "tape.wav");
    }

    private static Naming listed(String name, double[] list, double... hz) {
        return listed(name, null, list, hz);
    }

    private static Naming listed(String name, Double speedToneHz, double[] list, double... hz) {
        List<ListedTone> tones = new ArrayList<>();
        for (double l : list) {
            tones.add(Heard.listed(l, null, null));
        }
        ToneList toneList = new ToneList(ToneList.FORMAT, 1, null, name, null, null, null, tones);
        TapeQuestion question = new TapeQuestion(toneList, speedToneHz, null, null, null, null);
        return Naming.of(Heard.tones(hz), question, "tape.wav");
    }

    private static String refusal(org.junit.jupiter.api.function.Executable of) {
        return assertThrows(UnusableInputException.class, of).getMessage();
    }

    private static Double[] nominal(Naming naming) {
        return naming.tones().stream().map(NamedTone::nominalHz).toArray(Double[]::new);
    }

    private static void assertNominal(Naming naming, Double... wanted) {
        assertEquals(Arrays.asList(wanted), Arrays.asList(nominal(naming)));
    }

    /** 2 % fast; one that comes again, a little off, is the same tone. */
    @Test
    void tonesOfASeriesAreNamed() {
        Naming naming = named(null, 1020, 64.26, 127.5, 510, 4080, 1021, 16_320);
        assertNominal(naming, 1000.0, 63.0, 125.0, 500.0, 4000.0, 1000.0, 16_000.0);
        assertEquals("octave", naming.series().kind());
        assertEquals("the octave series of ISO 266", naming.series().name());
        assertEquals(7, naming.series().matched());
        assertEquals(1.02, naming.series().speedFactor(), 1e-9);
        assertFalse(naming.series().ambiguous());
        assertEquals(List.of(), naming.notes());
        assertEquals(6, naming.tones().get(5).number());
    }

    /** Three of four octave tones, and one that belongs to no list. */
    @Test
    void aStrangeToneIsNamed() {
        Naming naming = named(null, 1000, 125, 500, 4000, 3350);
        assertNominal(naming, 1000.0, 125.0, 500.0, 4000.0, null);
        assertEquals(4, naming.series().matched());
        assertEquals(
                List.of("Tones that do not belong to the list: 3350 Hz at 12.0 s."),
                naming.notes());
    }

    @Test
    void tonesOfNoListStayWithoutAName() {
        Naming naming = named(null, 1000, 437, 1111, 5432, 2718);
        assertEquals("none", naming.series().kind());
        assertEquals("no usual list", naming.series().name());
        assertEquals(0, naming.series().matched());
        assertNull(naming.series().speedFactor());
        assertNominal(naming, null, null, null, null, null);
        assertEquals(5, naming.tones().get(4).number());
        assertEquals(1, naming.notes().size());
        assertTrue(naming.notes().get(0).startsWith("The tones fit no usual list of frequencies"));
    }

    /** The tone for speed has its frequency even so, within 25 %. */
    @ParameterizedTest
    @CsvSource({"4040, 3233, true", "4040, 3231, false", "4040, 5049, true", "4040, 5051, false"})
    void theToneForSpeedIsNamedInAnyCase(double heard, double nominal, boolean isNamed) {
        double[] hz = {437, 1111, heard};
        if (isNamed) {
            Naming naming = named(nominal, hz);
            assertEquals("none", naming.series().kind());
            assertNominal(naming, null, null, nominal);
        } else {
            assertTrue(
                    refusal(() -> named(nominal, hz))
                            .startsWith(
                                    "No tone within 25 % of " + (int) nominal + " Hz was found"));
        }
    }

    /** What is said against the list is not passed over, nor what the recording does not hold. */
    @Test
    void theToneForSpeedIsInTheList() {
        double[] list = {1000, 3000, 8000};
        assertEquals(
                "The list of the tape has no tone of 3150 Hz, which --speed-tone names; it has"
                        + " 1000 Hz, 3000 Hz, 8000 Hz. Correct one of the two.",
                refusal(() -> listed("own", 3150.0, list, list)));
        double[] long7 = {1000, 125, 250, 500, 2000, 4000, 8000};
        assertEquals(
                "The list of the tape has no tone of 3150 Hz, which --speed-tone names; it has"
                        + " 1000 Hz, 125 Hz, 250 Hz, 500 Hz, 2000 Hz, 4000 Hz and more. Correct"
                        + " one of the two.",
                refusal(() -> listed("own", 3150.0, long7, long7)));
        assertEquals(
                "The tone for speed that --speed-tone names, 3000 Hz, stands in the list of the"
                        + " tape but was not found in tape.wav. Leave --speed-tone out to read the"
                        + " speed from the other tones.",
                refusal(() -> listed("own", 3000.0, list, 1000, 8000)));
        assertNominal(listed("own", 3000.0, list, list), 1000.0, 3000.0, 8000.0);
        assertNominal(listed("own", 3002.0, list, list), 1000.0, 3000.0, 8000.0);
    }

    /** Of two tones near it the one that is taken for it has its frequency, the other none. */
    @Test
    void onlyOneToneIsTheToneForSpeed() {
        assertNominal(named(3233.0, 437, 3580, 3200), null, null, 3233.0);
    }

    /**
     * Frequencies that no list holds are those of the tape if it is said: 1004 Hz is not taken for
     * 1 kHz that is 0.4 % fast, and 2800 Hz is no strange tone.
     */
    @ParameterizedTest
    @CsvSource({"1004, 1", "1004, 1.02", "2800, 0.98"})
    void aToneForSpeedOfNoListKeepsItsFrequency(double said, double factor) {
        Naming naming = named(said, 63 * factor, 500 * factor, said * factor, 8000 * factor);
        assertNominal(naming, 63.0, 500.0, said, 8000.0);
        assertEquals(factor, naming.series().speedFactor(), 1e-9);
        assertEquals("octave", naming.series().kind());
        assertEquals(List.of(), naming.notes());
    }

    /** Six tones are named, each once; of more it is said that there are more. */
    @Test
    void whatWasHeardInsteadIsSaid() {
        assertEquals(
                "No tone within 25 % of 3150 Hz was found in tape.wav. Heard were 1000 Hz, 63 Hz,"
                        + " 125.4 Hz, 250 Hz, 500 Hz, 2000 Hz.",
                refusal(() -> named(3150.0, 1000, 63, 125.4, 250, 500, 1000, 2000)));
        assertEquals(
                "No tone within 25 % of 3150 Hz was found in tape.wav. Heard were 1000 Hz, 63 Hz,"
                        + " 125.4 Hz, 250 Hz, 500 Hz, 2000 Hz and more.",
                refusal(() -> named(3150.0, 1000, 63, 125.4, 250, 500, 2000, 8000)));
    }

    /** The speed of the tone that is named decides: 3181.5 Hz for 3000 Hz is 6.05 % fast. */
    @Test
    void theToneForSpeedTellsTheFactor() {
        Naming either = named(null, 3060);
        assertTrue(either.series().ambiguous());
        assertEquals(
                List.of(
                        "The tones fit in more than one way: 3060.0 Hz may be 3000 Hz at +2.0 % of"
                                + " speed or 3150 Hz at -2.9 %. The nearer one is shown; say with"
                                + " --speed-tone or --tones what the tape holds."),
                either.notes());
        Naming one = named(3150.0, 3060);
        assertFalse(one.series().ambiguous());
        assertNominal(one, 3150.0);
    }

    /**
     * Of several tones near the one for speed those within the same tenth of an e-fold are alike
     * and the longest of them counts: a short one of 3150 Hz beside a long one of 3060 Hz.
     */
    @Test
    void theLongestOfThoseNearIsTheToneForSpeed() {
        TapeQuestion question = new TapeQuestion(null, 3150.0, null, null, null, null);
        List<HeardTone> tones =
                List.of(
                        Heard.tone(0, 2, 3150, -20, -20),
                        Heard.tone(3, 6, 3060, -20, -20),
                        Heard.tone(10, 9, 2700, -20, -20));
        Naming naming = Naming.of(tones, question, "tape.wav");
        assertEquals(3060 / 3150.0, naming.series().speedFactor(), 1e-9);
    }

    /** 315 Hz and its series at half the speed: said, whether by list or by series. */
    @Test
    void halfAndTwiceTheSpeedAreSaid() {
        double[] list = {1000, 63, 500, 3150, 12_500, 16_000};
        double[] half = Arrays.stream(list).map(f -> f / 2).toArray();
        double[] twice = Arrays.stream(list).map(f -> f * 2).toArray();
        Naming slow = named(null, half);
        assertEquals(0.5, slow.series().speedFactor(), 1e-9);
        assertEquals(List.of(AT_HALF), slow.notes());
        assertEquals(List.of(AT_HALF), listed("own", list, half).notes());
        assertEquals(List.of(AT_HALF.replace("half", "twice")), listed("own", list, twice).notes());
        assertEquals(List.of(), listed("own", list, list).notes());
    }

    /**
     * 500 Hz and octaves of it fit at the right speed, but the first tone of a tape usually is one
     * for level: at half the speed it would be 1 kHz, at double speed 250 Hz would.
     */
    @ParameterizedTest
    @CsvSource({
        "500, half, 1000",
        "2000, twice, 1000",
        "1000, -, -",
        "4000, -, -",
    })
    void anUnusualFirstToneMayBeAnotherSpeed(double first, String speed, String meant) {
        Naming naming = named(null, first, 125, 250, 8000);
        assertEquals(1, naming.series().speedFactor(), 1e-9);
        assertEquals(
                speed.equals("-")
                        ? List.of()
                        : List.of(
                                "The tones fit as well at "
                                        + speed
                                        + " the speed, where the first one would be the usual "
                                        + meant
                                        + " Hz: check the speed switch of the machine, or say"
                                        + " --speed-tone."),
                naming.notes());
    }

    /** Once the speed is known from a tone, no other is proposed. */
    @Test
    void aNamedToneForSpeedLeavesNoDoubt() {
        assertEquals(List.of(), named(8000.0, 500, 125, 250, 8000).notes());
    }

    @Test
    void theListNamesTonesInItsOrder() {
        Naming naming = listed("own", new double[] {1000, 8000, 63, 400}, 1010, 8080, 777, 404);
        assertNominal(naming, 1000.0, 8000.0, null, 400.0);
        assertEquals("given", naming.series().kind());
        assertEquals("own", naming.series().name());
        assertEquals(3, naming.series().matched());
        assertEquals(1.01, naming.series().speedFactor(), 1e-9);
        assertFalse(naming.series().ambiguous());
        assertEquals(List.of(63.0), naming.series().missingHz());
        assertEquals(
                List.of(
                        "Not found of the list: 63 Hz. The recording may not hold them, or they"
                                + " drown in noise or are shorter than 1.2 s.",
                        "Tones that do not belong to the list: 777 Hz at 6.0 s."),
                naming.notes());
        assertEquals(2, naming.tones().get(1).number());
        assertEquals(8000, naming.tones().get(1).listed().frequencyHz());
        assertNull(naming.tones().get(2).listed());
        assertEquals(
                "the list that was given", listed(null, new double[] {1000}, 1000).series().name());
    }

    /** Half of the tones must be pairs; the first that is none is named. */
    @Test
    void aListThatFitsLessThanHalfIsRefused() {
        double[] list = {1000, 8000};
        assertEquals(2, listed("own", list, 1000, 8000, 437, 777).series().matched());
        assertEquals(
                "The tones in tape.wav do not fit the list: 2 of 5 tones heard are among its 2, in"
                        + " this order. The first that does not fit has 437.0 Hz, at 6.0 s. Check"
                        + " the list, or leave it out.",
                refusal(() -> listed("own", list, 1000, 8000, 437, 777, 555)));
        assertTrue(
                refusal(() -> listed("own", list, 437))
                        .startsWith("The tones in tape.wav do not fit the list: 0 of 1 tones"));
    }

    /** Six strange tones are named; of seven it is said that there are more. */
    @Test
    void manyStrangeTonesAreCutShort() {
        List<NamedTone> strange = Heard.named(11, 22, 33, 44.44, 55, 66, 77);
        assertEquals(
                List.of(
                        "Tones that do not belong to the list: 11 Hz at 0.0 s, 22 Hz at 3.0 s, 33 Hz"
                                + " at 6.0 s, 44.4 Hz at 9.0 s, 55 Hz at 12.0 s, 66 Hz at 15.0 s"
                                + " and more."),
                NamingWords.strange(strange));
        assertTrue(NamingWords.strange(strange.subList(0, 6)).get(0).endsWith("66 Hz at 15.0 s."));
        assertEquals(List.of(), NamingWords.strange(List.of()));
    }

    /** The first tone tells that has a name in both ways and another one in each. */
    @Test
    void twoWaysAreToldByATone() {
        double[] heard = {1000, 437, 2000, 3060};
        SeriesFit one = new SeriesFit(UsualSeries.USUAL, 1.02, new double[] {0, 400, 2000, 3000});
        SeriesFit other =
                new SeriesFit(UsualSeries.USUAL, 0.97, new double[] {1000, 0, 2000, 3150});
        assertTrue(
                NamingWords.otherWays(List.of(one, other), heard)
                        .startsWith(
                                "The tones fit in more than one way: 3060.0 Hz may be 3000 Hz at +2.0"
                                        + " % of speed or 3150 Hz at -3.0 %."));
    }

    /** Between 0.7 and 1.4 it is the right speed. */
    @ParameterizedTest
    @CsvSource({"0.69, half", "0.71, right", "1, right", "1.39, right", "1.41, twice"})
    void whatIsFarFromOneIsAnotherSpeed(double factor, String speed) {
        List<String> said = NamingWords.wrongSpeed(factor);
        assertEquals(speed.equals("right"), said.isEmpty());
        assertTrue(said.isEmpty() || said.get(0).startsWith("The tones fit at " + speed));
    }

    /** One decimal, rounded half up, where there is one. */
    @ParameterizedTest
    @CsvSource({"1000, 1000 Hz", "31.5, 31.5 Hz", "12.25, 12.3 Hz", "99.96, 100 Hz"})
    void frequenciesAreToldPlainly(double hz, String told) {
        assertEquals(told, NamingWords.hz(hz));
    }
}
