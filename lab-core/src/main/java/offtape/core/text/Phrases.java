package offtape.core.text;

import java.util.List;
import java.util.Map;
import java.util.MissingResourceException;
import java.util.TreeMap;

/**
 * What a program says to a reader in the reader's language: its own texts by their keys, sentences
 * that results and exceptions carry in English ({@link Translation}), and numbers. Immutable.
 */
public final class Phrases {

    private final Translation translation;
    private final Map<String, Texts> subjects;

    private Phrases(Translation translation, Map<String, Texts> subjects) {
        this.translation = translation;
        this.subjects = subjects;
    }

    /**
     * The phrases of several bundles beside a class. A key begins with the name of its bundle and a
     * dot, such as {@code noise.caption} in the bundle {@code noise}.
     *
     * @param near a class in whose package the bundles lie
     */
    public static Phrases of(Language language, Class<?> near, List<String> bundles) {
        Map<String, Texts> subjects = new TreeMap<>();
        bundles.forEach(name -> subjects.put(name, Texts.of(near, name, language.locale())));
        return new Phrases(Translation.to(language), Map.copyOf(subjects));
    }

    /** The reader's language. */
    public Language language() {
        return translation.language();
    }

    /**
     * A text of the program's own.
     *
     * @param key the name of its bundle, a dot and its name there
     * @param arguments what it tells; numbers are written as the language does
     * @throws MissingResourceException if there is none of that name
     */
    public String say(String key, Object... arguments) {
        int dot = key.indexOf('.');
        Texts subject = subjects.get(key.substring(0, Math.max(0, dot)));
        if (subject == null) {
            throw new MissingResourceException(
                    "there is no text " + key, Phrases.class.getName(), key);
        }
        return subject.say(key, arguments);
    }

    /** An English sentence out of results or an exception, in the reader's language. */
    public String told(String english) {
        return translation.of(english);
    }

    /** A number as programs write it, as the reader does: {@code 1.5} or {@code 1,5}. */
    public String number(String plain) {
        return Amount.in(language(), plain);
    }
}
