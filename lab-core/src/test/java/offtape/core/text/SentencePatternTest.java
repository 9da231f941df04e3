package offtape.core.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;

class SentencePatternTest {

    private static Optional<String> translated(String english, String german, String sentence) {
        return SentencePattern.of(english, german)
                .orElseThrow()
                .translated(
                        sentence,
                        new Effort(),
                        word -> "<" + word + ">",
                        number -> number.replace('.', ','));
    }

    @Test
    void contentsKeepTheirPlacesInWhateverOrderTheLanguagePutsThem() {
        assertEquals(
                Optional.of("Bei 1,5 kHz liegt <left>"),
                translated(
                        "%s lies at %.1f kHz",
                        "Bei %2$.1f kHz liegt %1$s", "left lies at 1.5 kHz"));
    }

    @Test
    void aSentenceOfAnotherPatternIsNotTaken() {
        String english = "The curve is uneven by %.1f dB.";
        String german = "Die Kurve ist um %.1f dB uneben.";
        assertTrue(translated(english, german, "The curve is uneven by much dB.").isEmpty());
        assertTrue(translated(english, german, "The curve is uneven by 1.5 dB").isEmpty());
    }

    @Test
    void percentSignsAreSignsAndNoPlaces() {
        assertEquals(
                Optional.of("<x> ist 3 % zu hoch"),
                translated("%s is 3 %% high", "%s ist 3 %% zu hoch", "x is 3 % high"));
        assertTrue(SentencePattern.hasPlaces("%d of 3"));
        assertEquals(false, SentencePattern.hasPlaces("3 % of the tape, 5 %"));
    }

    /** Matched by all ways of parting it, this would take longer than anybody waits. */
    @Test
    void whatLooksLikeAPatternInManyWaysIsGivenUp() {
        String pattern = "a%s, %s, %s, %s, %s, %s, %s, %s end";
        assertTrue(translated(pattern, pattern, "a" + ", ".repeat(2000) + "fin").isEmpty());
        String almost = "a%s, %s, %s, %s, %s, %s, %s, %d end";
        assertTrue(translated(almost, almost, "a" + ", ".repeat(1000) + "x end").isEmpty());
    }

    @Test
    void whatHasHardlyLettersOfItsOwnIsNoPattern() {
        assertTrue(SentencePattern.of("%s: %s", "%s: %s").isEmpty());
    }
}
