package offtape.report.apply.listen;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import offtape.core.text.Language;
import offtape.core.text.Texts;
import offtape.core.text.Translation;
import offtape.report.result.ResultsJson;

/** What the listening page says in its reader's language: its frame and its script. Immutable. */
final class ListenTexts {

    private static final String BUNDLE = "listen";
    private static final String OF_PAGE = "listen.page-";
    private static final String OF_SCRIPT = "listen.script-";

    /** Where the frame has a text: its name in double braces. */
    private static final Pattern PLACE = Pattern.compile("\\{\\{([a-z-]+)\\}\\}");

    /** The place of what is told of the two sounds. */
    private static final String FACTS = "facts";

    private final Language language;
    private final Texts texts;

    ListenTexts(Language language) {
        this.language = language;
        this.texts = Texts.of(ListenTexts.class, BUNDLE, language.locale());
    }

    /** The code of the language, for the page to say which it is in. */
    String code() {
        return language.code();
    }

    /** What the page is called. */
    String title() {
        return inert(texts.say(OF_PAGE + "title"));
    }

    /** The frame of the page with its texts and with what is told of the sounds. */
    String framed(String frame, ListenFacts facts) {
        return PLACE.matcher(frame)
                .replaceAll(
                        place ->
                                Matcher.quoteReplacement(
                                        place.group(1).equals(FACTS)
                                                ? items(facts.sentences())
                                                : inert(texts.say(OF_PAGE + place.group(1)))));
    }

    private String items(List<String> sentences) {
        Translation translation = Translation.to(language);
        return sentences.stream()
                .map(sentence -> "<li>" + inert(translation.of(sentence)) + "</li>")
                .collect(Collectors.joining("\n"));
    }

    /** The texts that the script says, by their names, as an object of its language. */
    String scriptTexts() {
        Map<String, String> said = new TreeMap<>();
        texts.keys().stream()
                .filter(key -> key.startsWith(OF_SCRIPT))
                .forEach(key -> said.put(key.substring(OF_SCRIPT.length()), texts.pattern(key)));
        return ResultsJson.write(said).replace("<", "\\u003c").strip();
    }

    private static String inert(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }
}
