package offtape.cli.command;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import offtape.cli.capture.Capture;
import offtape.cli.capture.CaptureResult;
import offtape.cli.capture.PlayList;
import offtape.cli.capture.StopSignal;
import offtape.cli.sound.LevelCeiling;
import offtape.cli.sound.SoundStream;
import offtape.cli.sound.TooLoudException;
import offtape.cli.terminal.ExitCodes;
import offtape.cli.terminal.Interrupt;
import offtape.cli.terminal.Terminal;
import offtape.core.output.OutputFolder;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;
import offtape.core.programme.ProgrammeFolder;
import offtape.report.render.SessionFiles;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Plays the programme and records its return. */
@Command(
        name = "capture",
        description =
                "Plays the test programme into the machine and records what comes back at the same"
                        + " time.",
        footer = {
            "",
            "Example: offtape capture --programme programme --out return.wav",
            "Recorded and measured at once, off tape on a machine with three heads:",
            "  offtape capture --programme programme --out return.wav --mode off-tape \\",
            "           --measure session --tape-speed 19.05cm/s",
            "",
            "The programme holds loud tones up to 20 kHz: turn loudspeakers and headphones",
            "down or off. Keep fingers, hair and sleeves away from moving reels.",
        })
final class CaptureCommand implements Callable<Integer> {

    /** Silence before the programme, so that its first frame lies well inside the recording. */
    private static final double LEAD_S = 0.5;

    private static final double LEAST_TAIL_S = 0.5;
    private static final double MOST_TAIL_S = 60;

    @Spec private CommandSpec spec;

    @Mixin private CommonOptions common;

    @Mixin private DeviceOptions devices;

    @Option(
            names = "--programme",
            required = true,
            paramLabel = "DIR",
            description = "The folder with the programme to play.")
    private Path programme;

    @Option(
            names = "--out",
            required = true,
            paramLabel = "FILE.wav",
            description = "The recording to write, 24 bits.")
    private Path out;

    @Option(
            names = "--tail",
            paramLabel = "SECONDS",
            description =
                    "How long to go on recording after the programme, 0.5 to 60 (default: 2), more"
                            + " than the machine's delay.")
    private double tailSeconds = 2;

    @Option(
            names = "--measure",
            paramLabel = "SESSION",
            description = "Measure the recording afterwards and write the session to this folder.")
    private Path session;

    @Mixin private SessionOptions said;

    @Mixin private CaptureOptions mode;

    @Option(names = "--force", description = "Overwrite a file that is in the way.")
    private boolean force;

    @Override
    public Integer call() {
        if (!(tailSeconds >= LEAST_TAIL_S && tailSeconds <= MOST_TAIL_S)) {
            throw new ParameterException(
                    spec.commandLine(), "Recording goes on for 0.5 to 60 seconds: give --tail so.");
        }
        Terminal terminal = common.terminal();
        if (session == null) {
            return capture(terminal);
        }
        SessionRun run =
                new SessionRun(
                        terminal, new ChannelOptions(), programme, said, mode.capture(terminal, 1));
        try (OutputFolder folder = OutputFolder.open(session, force, SessionFiles.names())) {
            int code = capture(terminal);
            if (code == ExitCodes.DONE) {
                run.measure(List.of(out), session, folder);
            }
            return code;
        }
    }

    private Programme bearable() {
        LevelCeiling ceiling = devices.ceiling();
        Programme sound = ProgrammeFolder.open(programme);
        CueSheet sheet = sound.sheet();
        try {
            ceiling.check(
                    sheet.peakOf(sheet.loudestDb()),
                    "The programme",
                    "Write one with a lower --reference-level, and raise the machine's record level"
                            + " instead.");
            return sound;
        } catch (TooLoudException e) {
            sound.close();
            throw e;
        }
    }

    private int capture(Terminal terminal) {
        StopSignal stop = new StopSignal();
        // opened first and so closed last, when all is in order
        try (Interrupt interrupt = Interrupt.guard();
                Programme sound = bearable();
                CaptureFile file = CaptureFile.begin(out, force);
                SoundStream stream = devices.open(common.layers(), sound.sheet().sampleRateHz())) {
            interrupt.first(stop::give);
            CaptureWords words = new CaptureWords(terminal);
            PlayList list = new PlayList(sound.audio(), 1, LEAD_S, tailSeconds, devices.ceiling());
            Capture capture = new Capture(stream, stop, words::progress);
            CaptureResult result = file.record(stream, wav -> capture.run(list, wav));
            words.lines(result, file.place()).forEach(terminal::message);
            return result.complete() ? ExitCodes.DONE : ExitCodes.INTERRUPTED;
        }
    }
}
