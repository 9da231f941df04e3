package offtape.report.glossary;

import java.text.Normalizer;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import offtape.core.text.Texts;

/** What the words of the trade mean, for somebody who has never heard them. */
public final class Glossary {

    private static final String TERM = ".term";
    private static final String MEANING = ".meaning";

    private Glossary() {}

    /**
     * One word.
     *
     * @param key its name in every language
     * @param term the word
     * @param meaning what it means, in plain sentences
     */
    public record Entry(String key, String term, String meaning) {}

    /** All of them in the order of their words. */
    public static List<Entry> in(Locale language) {
        Texts texts = Texts.of(Glossary.class, "glossary", language);
        return texts.keys().stream()
                .filter(key -> key.endsWith(TERM))
                .map(key -> key.substring(0, key.length() - TERM.length()))
                .map(key -> new Entry(key, texts.say(key + TERM), texts.say(key + MEANING)))
                .sorted(Comparator.comparing(entry -> letters(entry.term())))
                .toList();
    }

    /** Letters without case and accents, by which a reader looks a word up. */
    private static String letters(String term) {
        String parted = Normalizer.normalize(term, Normalizer.Form.NFD);
        return parted.replaceAll("[^\\p{Alnum} ]", "").toLowerCase(Locale.ROOT);
    }
}
