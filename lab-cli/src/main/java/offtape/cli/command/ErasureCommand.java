package offtape.cli.command;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import offtape.cli.terminal.ExitCodes;
import offtape.cli.terminal.Terminal;
import offtape.core.audio.AudioFile;
import offtape.core.audio.AudioFiles;
import offtape.core.text.Sentences;
import offtape.report.measure.erasure.ErasureMeasure;
import offtape.report.result.Erasure;
import offtape.report.result.ResultsJson;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** How well the machine erases. */
@Command(
        description =
                "Leads through a check of erasing: a loud tone of 1 kHz is recorded, silence over the"
                        + " first part of it, and both are replayed. Tells what is left, in dB.",
        footer = {
            "",
            "Example: offtape erasure --out erasure.wav",
            "A replay that was recorded elsewhere: offtape erasure --recording replay.wav",
            "",
            "Use a tape that may be overwritten. The tone is loud: turn loudspeakers and",
            "headphones down or off. Keep fingers, hair and sleeves away from moving reels.",
        })
final class ErasureCommand implements Callable<Integer> {

    private static final Sentences SAID = Sentences.near(ErasureCommand.class);

    @Spec private CommandSpec spec;

    @Mixin private CommonOptions common;

    @Mixin private DeviceOptions devices;

    @Option(
            names = "--recording",
            paramLabel = "FILE",
            description =
                    "A replay that exists already, a WAV, AIFF or FLAC file; nothing is played.")
    private Path recording;

    @Option(names = "--out", paramLabel = "FILE.wav", description = "Where the replay goes.")
    private Path out;

    @Option(
            names = "--level",
            paramLabel = "DBFS",
            description = "Peak of the tone, -60 to 0 (default: -12).")
    private double levelDbfs = -12;

    @Option(
            names = "--sample-rate",
            paramLabel = "HZ",
            description = "Frames a second (default: 48000).")
    private int sampleRateHz = 48_000;

    @Option(names = "--json", description = "Print the figures as JSON to standard output.")
    private boolean json;

    @Option(names = "--force", description = "Overwrite a file that is in the way.")
    private boolean force;

    @Override
    public Integer call() {
        if ((recording == null) == (out == null)) {
            throw new ParameterException(spec.commandLine(), SAID.say("erasure-out"));
        }
        if (!(levelDbfs >= -60 && levelDbfs <= 0)) {
            throw new ParameterException(spec.commandLine(), SAID.say("erasure-level"));
        }
        Terminal terminal = common.terminal();
        if (recording == null) {
            int code =
                    new ErasureRun(
                                    terminal,
                                    devices,
                                    common.layers(),
                                    sampleRateHz,
                                    Math.pow(10, levelDbfs / 20))
                            .record(out, force);
            if (code != ExitCodes.DONE) {
                return code;
            }
        }
        try (AudioFile replay = AudioFiles.open(recording == null ? out : recording)) {
            List<Erasure> channels = ErasureMeasure.read(replay);
            if (json) {
                terminal.raw(ResultsJson.write(new Answer(channels)));
            } else {
                new ErasureWords(terminal).lines(channels).forEach(terminal::result);
            }
        }
        return ExitCodes.DONE;
    }

    /** The answer for scripts. */
    record Answer(List<Erasure> channels) {}
}
