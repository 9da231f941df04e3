package offtape.core.text;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Says in a reader's language what results and exceptions say in English. A sentence is known again
 * by the patterns of the English bundles ({@link Sentences}); what was filled in is translated too,
 * if it is a sentence or a word of theirs, and numbers are written as the language does. What no
 * bundle knows, such as a name, stays as it is. Immutable.
 */
public final class Translation {

    /** What may be on the class path; each that is there has an index of its bundles. */
    private static final List<String> MODULES = List.of("reference", "core", "report", "cli");

    /** No sentence of ours is so long; what is, others wrote. */
    private static final int LONGEST = 4000;

    /** Of those who read English. */
    private static final Translation NONE =
            new Translation(new Dictionary(Language.ENGLISH, Map.of(), List.of()));

    private final Dictionary dictionary;

    private Translation(Dictionary dictionary) {
        this.dictionary = dictionary;
    }

    /** Read once, when one other than English is first asked for, and never changed. */
    private static final class Read {
        static final Map<Language, Translation> BY_LANGUAGE = all();

        private static Map<Language, Translation> all() {
            Map<Language, Translation> all = new EnumMap<>(Language.class);
            for (Language language : Language.values()) {
                if (language != Language.ENGLISH) {
                    all.put(language, read(language));
                }
            }
            return Collections.unmodifiableMap(all);
        }
    }

    /** The translation into a language by all bundles of sentences on the class path. */
    public static Translation to(Language language) {
        return language == Language.ENGLISH ? NONE : Read.BY_LANGUAGE.get(language);
    }

    private static Translation read(Language language) {
        Map<String, String> whole = new TreeMap<>();
        List<SentencePattern> patterns = new ArrayList<>();
        bundles().forEach(path -> read(path, language, whole, patterns));
        patterns.sort(Comparator.comparingInt(SentencePattern::letters).reversed());
        return new Translation(new Dictionary(language, whole, patterns));
    }

    private static void read(
            String path,
            Language language,
            Map<String, String> whole,
            List<SentencePattern> patterns) {
        Texts english = Texts.at(path, Language.ENGLISH.locale());
        Texts other = Texts.at(path, language.locale());
        for (String key : english.keys()) {
            String pattern = english.pattern(key);
            if (SentencePattern.hasPlaces(pattern)) {
                SentencePattern.of(pattern, other.pattern(key)).ifPresent(patterns::add);
            } else {
                whole.put(english.say(key), other.say(key));
            }
        }
    }

    /** The paths of all bundles, in order. */
    private static SortedSet<String> bundles() {
        SortedSet<String> paths = new TreeSet<>();
        for (String module : MODULES) {
            try (InputStream in = Translation.class.getResourceAsStream(Sentences.INDEX + module)) {
                if (in != null) {
                    new String(in.readAllBytes(), StandardCharsets.UTF_8)
                            .lines()
                            .filter(line -> !line.isBlank())
                            .forEach(paths::add);
                }
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        return paths;
    }

    /** The reader's language. */
    public Language language() {
        return dictionary.language();
    }

    /** English text, a sentence or several, in the language; what is not known stays as it is. */
    public String of(String english) {
        boolean isOurs = english != null && !english.isBlank() && english.length() <= LONGEST;
        return isOurs && language() != Language.ENGLISH
                ? new Retelling(dictionary, new Effort()).of(english)
                : english;
    }
}
