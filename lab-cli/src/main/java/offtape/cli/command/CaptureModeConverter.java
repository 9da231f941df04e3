package offtape.cli.command;

import java.util.Arrays;
import java.util.stream.Collectors;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads the name of a capture mode that can be measured. */
final class CaptureModeConverter implements ITypeConverter<CaptureModeOption> {

    @Override
    public CaptureModeOption convert(String value) {
        return Arrays.stream(CaptureModeOption.values())
                .filter(m -> m.key().equalsIgnoreCase(value))
                .findFirst()
                .orElseThrow(
                        () ->
                                new TypeConversionException(
                                        "returns of the mode \""
                                                + value
                                                + "\" cannot be measured; those of "
                                                + known()
                                                + " can."));
    }

    private static String known() {
        return Arrays.stream(CaptureModeOption.values())
                .map(CaptureModeOption::key)
                .collect(Collectors.joining(", "));
    }
}
