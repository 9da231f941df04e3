package offtape.cli.command;

import java.util.Arrays;
import java.util.stream.Collectors;
import offtape.report.compare.Pairing;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads what two sessions have to do with each other. */
final class PairingConverter implements ITypeConverter<Pairing> {

    @Override
    public Pairing convert(String value) {
        return Arrays.stream(Pairing.values())
                .filter(p -> p.key().equals(value))
                .findFirst()
                .orElseThrow(
                        () ->
                                new TypeConversionException(
                                        "\""
                                                + value
                                                + "\" must be one of "
                                                + Arrays.stream(Pairing.values())
                                                        .map(Pairing::key)
                                                        .collect(Collectors.joining(", "))
                                                + "."));
    }
}
