package offtape.report.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Locale;
import java.util.Set;
import offtape.core.text.Language;
import offtape.core.text.Texts;
import offtape.core.text.Translation;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What is kept of comparisons is English there and known again to be told in German. */
class ComparisonSentencesTest {

    private static final Texts ENGLISH = texts(Locale.ENGLISH);
    private static final Texts GERMAN = texts(Locale.GERMAN);
    private static final Translation TRANSLATION = Translation.to(Language.GERMAN);

    private static Texts texts(Locale language) {
        return Texts.of(Comparison.class, "Sentences", language);
    }

    static Set<String> keys() {
        return ENGLISH.keys();
    }

    /** Behind another sentence too, as a refusal has several. */
    @ParameterizedTest
    @MethodSource("keys")
    void everySentenceIsKnownAgain(String key) {
        String english = String.format(Locale.ENGLISH, ENGLISH.pattern(key), "9.53 cm/s", "Z-2");
        String german = String.format(Locale.GERMAN, GERMAN.pattern(key), "9,53 cm/s", "Z-2");
        assertEquals(german, TRANSLATION.of(english));
        assertEquals(german + " " + german, TRANSLATION.of(english + " " + english));
    }
}
