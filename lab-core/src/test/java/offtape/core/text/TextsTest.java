package offtape.core.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Locale;
import java.util.MissingResourceException;
import java.util.Set;
import org.junit.jupiter.api.Test;

class TextsTest {

    private static Texts in(Locale language) {
        return Texts.of(TextsTest.class, "sample", language);
    }

    @Test
    void aLanguageHasItsOwnWordsOrderAndNumbers() {
        assertEquals("in English", in(Locale.ENGLISH).say("both"));
        assertEquals("auf Deutsch", in(Locale.GERMAN).say("both"));
        assertEquals("a level of 1.5 dB in Rome", in(Locale.ENGLISH).say("level", 1.5, "Rome"));
        assertEquals("in Rom ein Pegel von 1,5 dB", in(Locale.GERMAN).say("level", 1.5, "Rom"));
    }

    @Test
    void englishStandsInWhateverTheMachineIsSetTo() {
        Locale before = Locale.getDefault();
        Locale.setDefault(Locale.GERMANY);
        try {
            assertEquals("in English", in(Locale.ENGLISH).say("both"));
            assertEquals("in English", in(Locale.ITALIAN).say("both"));
        } finally {
            Locale.setDefault(before);
        }
        assertEquals("nowhere else", in(Locale.GERMANY).say("only.english"));
        assertEquals(Set.of("both", "level", "only.english"), in(Locale.GERMAN).keys());
    }

    @Test
    void whatIsMissingIsNamed() {
        assertThrows(MissingResourceException.class, () -> in(Locale.ENGLISH).say("nothing"));
        assertThrows(
                MissingResourceException.class,
                () -> Texts.of(TextsTest.class, "nowhere", Locale.ENGLISH));
    }
}
