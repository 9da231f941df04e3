package offtape.cli.command;

import java.util.Iterator;
import offtape.core.standard.TrackSpacing;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads the name of a track format such as quarter-track. */
final class TrackFormatConverter implements ITypeConverter<TrackSpacing> {

    /** The names, for completion in shells. */
    static final class Names implements Iterable<String> {

        @Override
        public Iterator<String> iterator() {
            return TrackSpacing.names().iterator();
        }
    }

    @Override
    public TrackSpacing convert(String value) {
        try {
            return TrackSpacing.named(value);
        } catch (IllegalArgumentException e) {
            throw new TypeConversionException(e.getMessage());
        }
    }
}
