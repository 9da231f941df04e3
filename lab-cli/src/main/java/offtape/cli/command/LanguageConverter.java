package offtape.cli.command;

import java.util.Arrays;
import java.util.Iterator;
import java.util.stream.Collectors;
import offtape.core.text.Language;
import offtape.core.text.Sentences;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** A language by its code. */
final class LanguageConverter implements ITypeConverter<Language> {

    private static final Sentences SAID = Sentences.near(LanguageConverter.class);

    /** The codes of all languages. */
    static final class Codes implements Iterable<String> {
        @Override
        public Iterator<String> iterator() {
            return Arrays.stream(Language.values()).map(Language::code).iterator();
        }
    }

    @Override
    public Language convert(String code) {
        return Language.of(code)
                .orElseThrow(
                        () ->
                                new TypeConversionException(
                                        SAID.say(
                                                "no-texts",
                                                code,
                                                Arrays.stream(Language.values())
                                                        .map(Language::code)
                                                        .collect(Collectors.joining(" and ")))));
    }
}
