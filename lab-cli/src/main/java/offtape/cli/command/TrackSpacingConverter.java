package offtape.cli.command;

import offtape.core.standard.TrackSpacing;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a distance of tracks such as 4.0mm. */
final class TrackSpacingConverter implements ITypeConverter<TrackSpacing> {

    @Override
    public TrackSpacing convert(String value) {
        try {
            return TrackSpacing.parse(value);
        } catch (IllegalArgumentException e) {
            throw new TypeConversionException(e.getMessage());
        }
    }
}
