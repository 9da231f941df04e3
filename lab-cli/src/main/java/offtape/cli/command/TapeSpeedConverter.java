package offtape.cli.command;

import offtape.core.unit.TapeSpeed;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a tape speed such as 19.05cm/s or 7.5ips. */
final class TapeSpeedConverter implements ITypeConverter<TapeSpeed> {

    @Override
    public TapeSpeed convert(String value) {
        try {
            return TapeSpeed.parse(value);
        } catch (IllegalArgumentException e) {
            throw new TypeConversionException(e.getMessage());
        }
    }
}
