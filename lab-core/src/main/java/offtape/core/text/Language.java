package offtape.core.text;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** A language that readers can choose. What is kept in data files is English in all of them. */
public enum Language {
    /** The language in which results are kept and texts are written first. */
    ENGLISH(Locale.ENGLISH),
    /** German. */
    GERMAN(Locale.GERMAN);

    private final Locale locale;

    Language(Locale locale) {
        this.locale = locale;
    }

    /** How the language writes numbers and which bundles are its own. */
    public Locale locale() {
        return locale;
    }

    /** Its code of two letters, ISO 639-1. */
    public String code() {
        return locale.getLanguage();
    }

    /** The language of a code, or empty if there are no texts in it. */
    public static Optional<Language> of(String code) {
        return Arrays.stream(values())
                .filter(language -> language.code().equalsIgnoreCase(code))
                .findFirst();
    }
}
