package offtape.core.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import org.junit.jupiter.api.Test;

/** With the bundle of this package and those of the other packages of this module. */
class TranslationTest {

    private static final Translation GERMAN = Translation.to(Language.GERMAN);

    @Test
    void amountsRangesAndListsAreWrittenAsTheLanguageDoes() {
        assertEquals("1,5 dB", GERMAN.of("1.5 dB"));
        assertEquals("3,5 Winkelminuten", GERMAN.of("3.5 arc min"));
        assertEquals("3 Winkelminuten ± 0,2 Winkelminuten", GERMAN.of("3 arc min ± 0.2 arc min"));
        assertEquals("0,5 Hz bis 1,5 kHz", GERMAN.of("0.5 Hz to 1.5 kHz"));
        assertEquals("links und rechts", GERMAN.of("left and right"));
        assertEquals("1,5 dB, 2 dB und 3,5 dB", GERMAN.of("1.5 dB, 2 dB and 3.5 dB"));
    }

    @Test
    void choicesAreToldIfAllOfThemAreKnown() {
        assertEquals("links oder rechts", GERMAN.of("left or right"));
        assertEquals("links, rechts oder beide", GERMAN.of("left, right or both"));
        assertEquals("links oder rechts oder beide", GERMAN.of("left or right or both"));
        assertEquals("left or elsewhere", GERMAN.of("left or elsewhere"));
    }

    @Test
    void aWordAtTheBeginningOfASentenceIsKnown() {
        assertEquals("Links", GERMAN.of("Left"));
        assertEquals("Links und rechts", GERMAN.of("Left and right"));
        assertEquals("LEFT", GERMAN.of("LEFT"));
    }

    @Test
    void whatNoBundleKnowsStaysAsItIs() {
        assertEquals("Workshop 1.5 two-track", GERMAN.of("Workshop 1.5 two-track"));
        assertEquals("Nothing. Like this!", GERMAN.of("Nothing. Like this!"));
    }

    @Test
    void englishIsLeftAlone() {
        assertEquals("0.5 Hz to 1.5 kHz", Translation.to(Language.ENGLISH).of("0.5 Hz to 1.5 kHz"));
    }

    @Test
    void knownWordsAreFoundBeforeStopsAndDashes() {
        assertEquals("links; rechts", GERMAN.of("left; right"));
        assertEquals("links: 1,5 dB; rechts: 2,5 dB.", GERMAN.of("left: 1.5 dB; right: 2.5 dB."));
        assertEquals("links: 1,5 dB; 2,5 dB", GERMAN.of("left: 1.5 dB; 2.5 dB"));
        assertEquals("links – 1,5 dB.", GERMAN.of("left – 1.5 dB."));
        assertEquals("links – 1,5 dB. rechts.", GERMAN.of("left – 1.5 dB. right."));
        assertEquals("Deck 1.5 – links.", GERMAN.of("Deck 1.5 – left."));
        assertEquals("Deck 1.5 – Nothing.", GERMAN.of("Deck 1.5 – Nothing."));
    }

    /** Others may write anything, and nobody is to wait for it. */
    @Test
    void whatOthersMadeToLookLikeMuchIsLeftAsItIs() {
        for (String part :
                new String[] {"left, ", "left or ", "left and ", "x. ", "a – ", "1.5 dB: "}) {
            String text = part.repeat(3900 / part.length()) + "x";
            assertFalse(GERMAN.of(text).isEmpty());
        }
        String tooLong = "left or ".repeat(1000);
        assertEquals(tooLong, GERMAN.of(tooLong));
    }
}
