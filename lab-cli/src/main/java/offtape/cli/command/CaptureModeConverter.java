package offtape.cli.command;

import java.util.Locale;
import offtape.core.fault.UnusableInputException;
import offtape.core.transport.CaptureMode;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a capture mode by its name. */
final class CaptureModeConverter implements ITypeConverter<CaptureMode> {

    @Override
    public CaptureMode convert(String value) {
        try {
            return CaptureMode.ofKey(value.toLowerCase(Locale.ROOT));
        } catch (UnusableInputException e) {
            throw new TypeConversionException(e.getMessage());
        }
    }
}
