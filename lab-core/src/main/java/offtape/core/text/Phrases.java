package offtape.core.text;

import java.util.Map;
import java.util.MissingResourceException;
import java.util.concurrent.ConcurrentHashMap;

/**
 * What a program says to a reader in the reader's language: its own texts by their keys, sentences
 * that results and exceptions carry in English ({@link Translation}), and numbers.
 */
public final class Phrases {

    private final Class<?> near;
    private final Translation translation;
    private final Map<String, Texts> subjects = new ConcurrentHashMap<>();

    private Phrases(Class<?> near, Translation translation) {
        this.near = near;
        this.translation = translation;
    }

    /**
     * The phrases of the bundles beside a class, each read when it is first needed. A key begins
     * with the name of its bundle and a dot, such as {@code noise.caption} in the bundle {@code
     * noise}.
     *
     * @param near a class in whose package the bundles lie
     */
    public static Phrases of(Language language, Class<?> near) {
        return of(Translation.to(language), near);
    }

    /**
     * The same with a translation that others share, since its making reads many bundles.
     *
     * @param near a class in whose package the bundles lie
     */
    public static Phrases of(Translation translation, Class<?> near) {
        return new Phrases(near, translation);
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
        String subject = key.substring(0, Math.max(0, key.indexOf('.')));
        return subjects.computeIfAbsent(subject, name -> Texts.of(near, name, language().locale()))
                .say(key, arguments);
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
