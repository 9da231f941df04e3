package offtape.cli.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import offtape.core.text.Language;
import offtape.core.text.Texts;
import offtape.core.text.Translation;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What is kept and refused in English, said in German, with all sentences known at once. */
class SentencesTest {

    private static final String INDEX = "/META-INF/offtape/sentences-";

    /** Words that German has not; what names an option, a title or is a quotation has them. */
    private static final Pattern ENGLISH =
            Pattern.compile("(?<!-)\\b(the|of|and|is|with|from|no|not|than|which)\\b");

    /** The title of a paper. */
    private static final String TITLE =
            "The reproduction of magnetically recorded signals, Bell System Technical Journal";

    private static final Pattern PLACE =
            Pattern.compile("%(?:([0-9]+)\\$)?[-#+0,(]*[0-9]*(?:\\.[0-9]+)?([sdfeg%])");

    /** In no sentence and no list of words, and all unlike, so that each shows its place. */
    private static final List<String> UNKNOWN_WORDS =
            List.of("Quorx", "Vlimp", "Zadru", "Wexil", "Joppf", "Yttwo", "Brasq", "Ulkun");

    private static final Translation GERMAN = Translation.to(Language.GERMAN);

    /** The bundles of all modules. */
    static List<String> bundles() throws IOException {
        List<String> all = new ArrayList<>();
        for (String module : List.of("reference", "core", "report", "cli")) {
            try (InputStream in = SentencesTest.class.getResourceAsStream(INDEX + module)) {
                new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().forEach(all::add);
            }
        }
        return all;
    }

    /** Something fitting for each place of a pattern, none like another. */
    private static Object[] samples(String pattern) {
        Map<Integer, Object> samples = new TreeMap<>();
        Matcher place = PLACE.matcher(pattern);
        int next = 1;
        while (place.find()) {
            String kind = place.group(2);
            if (!kind.equals("%")) {
                int number = place.group(1) == null ? next++ : Integer.parseInt(place.group(1));
                samples.put(number, sample(kind, number));
            }
        }
        return samples.values().toArray();
    }

    private static Object sample(String kind, int number) {
        return switch (kind) {
            case "s" -> UNKNOWN_WORDS.get(number - 1);
            case "d" -> 40 + number;
            default -> 10.25 + number;
        };
    }

    @ParameterizedTest
    @MethodSource("bundles")
    void everySentenceIsKnownAgainByItsOwnPattern(String bundle) {
        Texts english = Texts.at(bundle, Language.ENGLISH.locale());
        Texts german = Texts.at(bundle, Language.GERMAN.locale());
        for (String key : english.keys()) {
            Object[] samples = samples(english.pattern(key));
            assertEquals(
                    german.say(key, samples), GERMAN.of(english.say(key, samples)), bundle + key);
        }
    }

    @ParameterizedTest
    @MethodSource("bundles")
    void noneIsLeftInEnglish(String bundle) {
        Texts german = Texts.at(bundle, Language.GERMAN.locale());
        for (String key : german.keys()) {
            String text = german.pattern(key).replace(TITLE, "");
            assertFalse(ENGLISH.matcher(text).find(), bundle + " " + key);
        }
    }
}
