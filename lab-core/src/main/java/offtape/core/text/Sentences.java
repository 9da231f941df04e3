package offtape.core.text;

import java.util.Locale;

/**
 * The sentences of one package that are kept in results or carried by exceptions: always English,
 * from the bundle {@code Sentences} beside a class. Who shows one to a reader of another language
 * has it translated ({@link Translation}), which knows it by its pattern; the bundle therefore
 * stands in the index {@value #INDEX} of its module. Read when the first sentence is said.
 */
public final class Sentences {

    /** Where each module lists its bundles, a path without ending a line; its name follows. */
    static final String INDEX = "/META-INF/offtape/sentences-";

    private static final String NAME = "Sentences";

    private final Class<?> near;
    private volatile Texts texts;

    private Sentences(Class<?> near) {
        this.near = near;
    }

    /** The sentences of the package in which a class lies. */
    public static Sentences near(Class<?> place) {
        return new Sentences(place);
    }

    /**
     * A sentence in English.
     *
     * @param arguments what it tells, in the order of its pattern
     * @throws java.util.MissingResourceException if there is none of that name
     */
    public String say(String key, Object... arguments) {
        Texts read = texts;
        if (read == null) {
            read = Texts.of(near, NAME, Locale.ENGLISH);
            texts = read;
        }
        return read.say(key, arguments);
    }
}
