package offtape.cli.command;

import offtape.cli.sound.ChannelPair;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads channels of a device such as 5,6. */
final class ChannelPairConverter implements ITypeConverter<ChannelPair> {

    @Override
    public ChannelPair convert(String value) {
        try {
            return ChannelPair.parse(value);
        } catch (IllegalArgumentException e) {
            throw new TypeConversionException(e.getMessage());
        }
    }
}
