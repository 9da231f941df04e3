package offtape.core.text;

import java.util.Locale;
import java.util.MissingResourceException;
import java.util.ResourceBundle;
import java.util.Set;
import java.util.TreeSet;

/**
 * The texts of one subject in one language, from a resource bundle beside a class. English is the
 * bundle without a language in its name and stands in where another has no text; what language the
 * machine is set to makes no difference. Immutable.
 *
 * <p>A text with arguments is a pattern of {@link String#format}, in which numbers are written as
 * the language writes them: {@code %1$.1f dB} is 1.5 dB in English and 1,5 dB in German. One
 * without arguments is taken as it stands.
 */
public final class Texts {

    private final Locale language;
    private final ResourceBundle bundle;

    private Texts(Locale language, ResourceBundle bundle) {
        this.language = language;
        this.bundle = bundle;
    }

    /**
     * The texts beside a class.
     *
     * @param near a class in whose package the bundle lies
     * @param name of the bundle, without language and ending
     * @param language of the texts
     * @throws MissingResourceException if there is no such bundle
     */
    public static Texts of(Class<?> near, String name, Locale language) {
        String base = near.getPackageName() + "." + name;
        ResourceBundle.Control control =
                ResourceBundle.Control.getNoFallbackControl(
                        ResourceBundle.Control.FORMAT_PROPERTIES);
        return new Texts(
                language, ResourceBundle.getBundle(base, language, near.getClassLoader(), control));
    }

    /** The language asked for. */
    public Locale language() {
        return language;
    }

    /** The names of all texts, in order. */
    public Set<String> keys() {
        return new TreeSet<>(bundle.keySet());
    }

    /**
     * A text.
     *
     * @param arguments what it tells, in the order of its pattern
     * @throws MissingResourceException if there is none of that name
     */
    public String say(String key, Object... arguments) {
        String text = bundle.getString(key);
        return arguments.length == 0 ? text : String.format(language, text, arguments);
    }
}
