package offtape.cli.command;

import java.nio.file.Path;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import offtape.cli.terminal.ExitCodes;
import offtape.cli.terminal.Terminal;
import offtape.core.audio.AudioFile;
import offtape.core.audio.AudioFiles;
import offtape.core.audio.AudioSource;
import offtape.core.text.Sentences;
import offtape.core.transport.TransportDescription;
import offtape.core.unit.TapeSpeed;
import offtape.report.measure.speed.BareTone;
import offtape.report.measure.speed.NamedParts;
import offtape.report.result.ResultsJson;
import offtape.report.result.Speed;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Speed and wow and flutter of a bare tone. */
@Command(
        description =
                "Speed deviation and wow and flutter of any recording of a steady tone, such as the"
                        + " 3150 Hz tone of a calibration tape. The longest steady tone in the file is"
                        + " taken.",
        footer = {
            "",
            "Example: offtape speed tone.wav --frequency 3150",
            "The third channel of a recording: offtape speed eight.flac --channels 3",
        })
final class SpeedCommand implements Callable<Integer> {

    private static final Sentences SAID = Sentences.near(SpeedCommand.class);

    @Spec private CommandSpec spec;

    @Mixin private CommonOptions common;

    @Mixin private ChannelOptions channels;

    @Parameters(
            index = "0",
            paramLabel = "FILE",
            description = "The recording, a WAV, AIFF or FLAC file of any sample rate.")
    private Path file;

    @Option(
            names = "--frequency",
            paramLabel = "HZ",
            description =
                    "What the tone should have, 300 to 12000 Hz (default: the usual test tone that is"
                            + " nearest: 3150, 3000, 1000, 10000 …).")
    private Double frequencyHz;

    @Option(names = "--transport", paramLabel = "FILE", description = SessionOptions.TRANSPORT_HELP)
    private Path transport;

    @Option(
            names = "--tape-speed",
            paramLabel = "SPEED",
            converter = TapeSpeedConverter.class,
            description =
                    "Nominal tape speed for --transport, such as 19.05cm/s (default: what stands in"
                            + " that file).")
    private TapeSpeed tapeSpeed;

    @Option(
            names = "--from",
            paramLabel = "SECONDS",
            description = "Where in the recording to begin (default: its start).")
    private double fromSeconds;

    @Option(
            names = "--to",
            paramLabel = "SECONDS",
            description = "Where in the recording to stop (default: its end).")
    private Double toSeconds;

    @Option(names = "--json", description = "Print the figures as JSON to standard output.")
    private boolean json;

    @Override
    public Integer call() {
        if (frequencyHz != null && !(frequencyHz >= 300 && frequencyHz <= 12_000)) {
            throw new CommandLine.ParameterException(
                    spec.commandLine(), SAID.say("frequency-range"));
        }
        if (!(fromSeconds >= 0 && toSeconds() > fromSeconds)) {
            throw new CommandLine.ParameterException(spec.commandLine(), SAID.say("from-to"));
        }
        Terminal terminal = common.terminal();
        TransportDescription parts = parts(terminal);
        try (AudioFile sound = AudioFiles.open(file)) {
            FileNotes.tell(sound, terminal);
            OptionalDouble nominal =
                    frequencyHz == null ? OptionalDouble.empty() : OptionalDouble.of(frequencyHz);
            AudioSource pair = channels.of(sound, terminal);
            Speed heard = BareTone.measure(pair, nominal, fromSeconds, toSeconds());
            Speed speed = named(heard, parts);
            if (json) {
                terminal.raw(ResultsJson.write(speed));
            } else {
                new SpeedWords(terminal).lines(speed).forEach(terminal::result);
            }
        }
        return ExitCodes.DONE;
    }

    private TransportDescription parts(Terminal terminal) {
        if (transport == null) {
            return null;
        }
        TransportDescription parts = TransportDescription.fromJson(transport);
        if (tapeSpeed == null && parts.tapeSpeedMmPerS() == null) {
            terminal.message(Speech.of(terminal).say("speed.no-tape-speed", transport));
        }
        return parts;
    }

    private Speed named(Speed speed, TransportDescription parts) {
        Double mmPerS = tapeSpeed == null ? null : (Double) tapeSpeed.mmPerS();
        return parts == null ? speed : NamedParts.name(speed, parts, mmPerS);
    }

    private double toSeconds() {
        return toSeconds == null ? Double.POSITIVE_INFINITY : toSeconds;
    }
}
