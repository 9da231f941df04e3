package offtape.cli.command;

import offtape.core.standard.TimeConstants;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads time constants such as 3180,50. */
final class TimeConstantsConverter implements ITypeConverter<TimeConstants> {

    @Override
    public TimeConstants convert(String value) {
        try {
            return TimeConstants.parse(value);
        } catch (IllegalArgumentException e) {
            throw new TypeConversionException(e.getMessage());
        }
    }
}
