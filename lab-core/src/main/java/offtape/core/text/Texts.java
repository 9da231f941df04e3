package offtape.core.text;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.MissingResourceException;
import java.util.Optional;
import java.util.Properties;
import java.util.ResourceBundle;
import java.util.Set;
import java.util.TreeMap;
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

    /** Which names a bundle has for a language, from the nearest to the one without. */
    private static final ResourceBundle.Control CANDIDATES =
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES);

    private final Locale language;
    private final Map<String, String> texts;

    private Texts(Locale language, Map<String, String> texts) {
        this.language = language;
        this.texts = Collections.unmodifiableMap(texts);
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
        return at(near.getPackageName().replace('.', '/') + "/" + name, language);
    }

    /**
     * The texts at a place among the resources.
     *
     * @param path of the bundle with slashes, without language and ending
     * @param language of the texts
     * @throws MissingResourceException if there is no such bundle
     */
    public static Texts at(String path, Locale language) {
        Map<String, String> texts = new TreeMap<>();
        List<Locale> languages = new ArrayList<>(CANDIDATES.getCandidateLocales(path, language));
        Collections.reverse(languages);
        for (Locale l : languages) {
            read(CANDIDATES.toBundleName(path, l)).ifPresent(texts::putAll);
        }
        if (texts.isEmpty()) {
            throw missing(path, "");
        }
        return new Texts(language, texts);
    }

    private static Optional<Map<String, String>> read(String path) {
        try (InputStream in = Texts.class.getResourceAsStream("/" + path + ".properties")) {
            if (in == null) {
                return Optional.empty();
            }
            Properties texts = new Properties();
            texts.load(new InputStreamReader(in, StandardCharsets.UTF_8));
            Map<String, String> read = new TreeMap<>();
            texts.stringPropertyNames().forEach(key -> read.put(key, texts.getProperty(key)));
            return Optional.of(read);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static MissingResourceException missing(String bundle, String key) {
        return new MissingResourceException(
                "there is no text " + bundle + " " + key, Texts.class.getName(), key);
    }

    /** The language asked for. */
    public Locale language() {
        return language;
    }

    /** The names of all texts, in order. */
    public Set<String> keys() {
        return new TreeSet<>(texts.keySet());
    }

    /**
     * A text as it stands in its bundle, a pattern if it takes arguments.
     *
     * @throws MissingResourceException if there is none of that name
     */
    public String pattern(String key) {
        String text = texts.get(key);
        if (text == null) {
            throw missing("", key);
        }
        return text;
    }

    /**
     * A text.
     *
     * @param arguments what it tells, in the order of its pattern
     * @throws MissingResourceException if there is none of that name
     */
    public String say(String key, Object... arguments) {
        String text = pattern(key);
        return arguments.length == 0 ? text : String.format(language, text, arguments);
    }
}
