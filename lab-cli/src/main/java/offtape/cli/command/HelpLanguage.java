package offtape.cli.command;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.PropertyResourceBundle;
import offtape.core.text.Language;
import picocli.CommandLine;

/**
 * The language of the help. English texts stand beside the options they tell of; those of another
 * language lie in a bundle and are read only for readers of that language, since most want none.
 */
final class HelpLanguage {

    /** The option that names the language, the same in all commands. */
    static final String OPTION = "--language";

    private static final String END_OF_OPTIONS = "--";

    private HelpLanguage() {}

    /**
     * The language that arguments ask for, before they are parsed; English if they name none or one
     * that there is not.
     *
     * @param words what follows {@code offtape}
     */
    static Language of(String... words) {
        List<String> options = List.of(words);
        int end = options.indexOf(END_OF_OPTIONS);
        String code = "";
        for (String word : end < 0 ? options : options.subList(0, end)) {
            if (code.equals(OPTION)) {
                code = word;
            } else if (word.equals(OPTION)) {
                code = OPTION;
            } else if (word.startsWith(OPTION + "=")) {
                code = word.substring(OPTION.length() + 1);
            }
        }
        return Language.of(code).orElse(Language.ENGLISH);
    }

    /** What follows a language that was named before anything else. */
    static String[] behind(String... words) {
        int from = 0;
        while (from < words.length && words[from].startsWith(OPTION)) {
            from += words[from].equals(OPTION) ? 2 : 1;
        }
        return Arrays.copyOfRange(words, Math.min(from, words.length), words.length);
    }

    /** Whether arguments say nothing but a language that there is. */
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

    /**
     * Gives the help of a command and of all below it in a language.
     *
     * @param line with the commands below it added already
     */
    static void set(CommandLine line, Language language) {
        if (language == Language.ENGLISH) {
            return;
        }
        String name = "help_" + language.code() + ".properties";
        try (InputStream in = HelpLanguage.class.getResourceAsStream(name)) {
            line.setResourceBundle(
                    new PropertyResourceBundle(new InputStreamReader(in, StandardCharsets.UTF_8)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
