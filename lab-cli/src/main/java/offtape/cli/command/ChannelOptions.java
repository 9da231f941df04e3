package offtape.cli.command;

import offtape.cli.terminal.Terminal;
import offtape.core.audio.AudioSource;
import offtape.core.audio.ChannelChoice;
import offtape.core.audio.ChosenChannels;
import picocli.CommandLine;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;

/** Which channels of a recording are measured. */
final class ChannelOptions {

    @Spec(Spec.Target.MIXEE)
    private CommandSpec command;

    @Option(
            names = "--channels",
            paramLabel = "NUMBERS",
            converter = Converter.class,
            description =
                    "Which channels of the recording to measure, counted from 1, such as 3,4; a single"
                            + " number measures that channel as a mono recording (default: the first"
                            + " two).")
    private ChannelChoice choice;

    /** Reads the numbers of channels. */
    static final class Converter implements ITypeConverter<ChannelChoice> {

        @Override
        public ChannelChoice convert(String value) {
            try {
                return ChannelChoice.parse(value);
            } catch (IllegalArgumentException e) {
                throw new TypeConversionException(e.getMessage() + ".");
            }
        }
    }

    /** The channels that were named, or null. */
    ChannelChoice choice() {
        return choice;
    }

    /**
     * The channels of a recording that are measured: those named, or else the first two.
     *
     * @throws CommandLine.ParameterException if it has no such channel
     */
    AudioSource of(AudioSource recording) {
        if (choice == null) {
            return ChannelChoice.firstTwo(recording);
        }
        try {
            return choice.of(recording);
        } catch (IllegalArgumentException e) {
            throw new CommandLine.ParameterException(
                    command.commandLine(), e.getMessage() + ".", e);
        }
    }

    /** The same, telling the user when others were left out unasked. */
    AudioSource of(AudioSource recording, Terminal terminal) {
        AudioSource chosen = of(recording);
        if (chosen instanceof ChosenChannels pair && !pair.isAskedFor()) {
            terminal.message(
                    Speech.of(terminal)
                            .say("capture.channels", recording.name(), recording.channels()));
        }
        return chosen;
    }
}
