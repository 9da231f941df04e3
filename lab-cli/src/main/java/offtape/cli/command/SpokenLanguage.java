package offtape.cli.command;

import offtape.core.text.Language;

/** The language that the words of a command line ask for, known before they are understood. */
final class SpokenLanguage {

    private static final String OPTION = "--language";

    private SpokenLanguage() {}

    /** The language named last; English if none is, or one without texts. */
    static Language of(String... words) {
        Language language = Language.ENGLISH;
        for (int i = 0; i < words.length; i++) {
            if (words[i].startsWith(OPTION + "=")) {
                language = of(words[i].substring(OPTION.length() + 1));
            } else if (words[i].equals(OPTION) && i + 1 < words.length) {
                language = of(words[i + 1]);
            }
        }
        return language;
    }

    /** Whether the words say nothing but a language. */
    static boolean isAllOf(String... words) {
        return switch (words.length) {
            case 0 -> true;
            case 1 ->
                    words[0].startsWith(OPTION + "=")
                            && Language.of(words[0].substring(OPTION.length() + 1)).isPresent();
            case 2 -> words[0].equals(OPTION) && Language.of(words[1]).isPresent();
            default -> false;
        };
    }

    private static Language of(String code) {
        return Language.of(code).orElse(Language.ENGLISH);
    }
}
