package offtape.cli.command;

import java.util.Arrays;
import java.util.stream.Collectors;
import offtape.core.text.Sentences;
import offtape.report.compare.Pairing;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads what two sessions have to do with each other. */
final class PairingConverter implements ITypeConverter<Pairing> {

    private static final Sentences SAID = Sentences.near(PairingConverter.class);

    @Override
    public Pairing convert(String value) {
        return Arrays.stream(Pairing.values())
                .filter(p -> p.key().equals(value))
                .findFirst()
                .orElseThrow(
                        () ->
                                new TypeConversionException(
                                        SAID.say(
                                                "no-pairing",
                                                value,
                                                Arrays.stream(Pairing.values())
                                                        .map(Pairing::key)
                                                        .collect(Collectors.joining(", ")))));
    }
}
