package offtape.report.apply;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import offtape.core.text.Language;
import offtape.core.text.Texts;
import offtape.core.text.Translation;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whatever is kept in English is known again with its contents, and said in German. */
class TranslatedSentencesTest {

    private static final Translation GERMAN = Translation.to(Language.GERMAN);

    private static final Pattern PLACE = Pattern.compile("%[-#+0,(]*[0-9]*(?:\\.[0-9]+)?([sdf%])");

    @ParameterizedTest
    @ValueSource(strings = {"correct", "level", "listen", "model"})
    void eachSentenceIsKnownAgain(String name) {
        String path = "offtape/report/apply/" + name + "/Sentences";
        Texts english = Texts.at(path, Locale.ENGLISH);
        Texts german = Texts.at(path, Locale.GERMAN);
        assertFalse(english.keys().isEmpty());
        for (String key : english.keys()) {
            Object[] contents = contents(english.pattern(key));
            assertEquals(
                    german.say(key, contents), GERMAN.of(english.say(key, contents)), path + key);
        }
    }

    /** Something for each place of a pattern, none like another. */
    private static Object[] contents(String pattern) {
        List<Object> contents = new ArrayList<>();
        Matcher place = PLACE.matcher(pattern);
        while (place.find()) {
            int number = contents.size() + 1;
            switch (place.group(1)) {
                case "s" -> contents.add("tape" + number + ".wav");
                case "d" -> contents.add(40 + number);
                case "f" -> contents.add(10.625 + number);
                default -> { // a sign and no place
                }
            }
        }
        // a sentence without places is taken as it stands, its per cent signs too
        return contents.toArray();
    }
}
