package offtape.cli.command;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import offtape.cli.sound.LevelCeiling;
import offtape.cli.sound.TooLoudException;
import offtape.cli.terminal.ExitCodes;
import offtape.cli.terminal.Terminal;
import offtape.core.output.OutputFolder;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;
import offtape.core.programme.ProgrammeFolder;
import offtape.core.text.Sentences;
import offtape.report.render.SessionFiles;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Plays the programme and records its return. */
@Command(
        description =
                "Plays the test programme into the machine and records what comes back at the same"
                        + " time, or does one after the other.",
        footer = {
            "",
            "Example: offtape capture --programme programme --out return.wav",
            "Recorded and measured at once, off tape on a machine with three heads:",
            "  offtape capture --programme programme --out return.wav --mode off-tape \\",
            "           --measure session --tape-speed 19.05cm/s",
            "On a machine with two heads: record, rewind, replay:",
            "  offtape capture --programme programme --pass record",
            "  offtape capture --programme programme --pass replay --out return.wav",
            "",
            "The programme holds loud tones up to 20 kHz: turn loudspeakers and headphones",
            "down or off. Keep fingers, hair and sleeves away from moving reels.",
        })
final class CaptureCommand implements Callable<Integer> {

    private static final Sentences SAID = Sentences.near(CaptureCommand.class);

    private static final double LEAST_TAIL_S = 0.5;
    private static final double MOST_TAIL_S = 600;

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
            paramLabel = "FILE.wav",
            description = "The recording to write, 24 bits; not with --pass record.")
    private Path out;

    @Option(
            names = "--pass",
            paramLabel = "record|replay",
            description =
                    "For a machine with two heads: record only plays the programme, replay only"
                            + " records it (default: both at once).")
    private CapturePass said;

    @Option(
            names = "--tail",
            paramLabel = "SECONDS",
            description =
                    "How long to go on after the programme's length, 0.5 to 600: more than the"
                            + " machine's delay, or than it takes to start the tape (default: 2; 30"
                            + " with --pass replay).")
    private Double tailSeconds;

    @Option(
            names = "--measure",
            paramLabel = "SESSION",
            description = "Measure the recording afterwards and write the session to this folder.")
    private Path session;

    @Mixin private SessionOptions sessionOptions;

    @Mixin private CaptureOptions mode;

    @Mixin private LimitOptions limits;

    @Option(names = "--force", description = "Overwrite a file that is in the way.")
    private boolean force;

    @Override
    public Integer call() {
        Terminal terminal = common.terminal();
        CapturePass pass = pass();
        if (session == null) {
            return run(terminal, pass, true);
        }
        SessionRun run =
                new SessionRun(
                        terminal,
                        new ChannelOptions(),
                        programme,
                        sessionOptions,
                        mode.capture(terminal, 1),
                        limits.set(),
                        limits.economics(),
                        common.language());
        try (OutputFolder folder = OutputFolder.open(session, force, SessionFiles.names())) {
            int code = run(terminal, pass, false);
            return code == ExitCodes.DONE
                    ? limits.code(run.measure(List.of(out), session, folder))
                    : code;
        }
    }

    private CapturePass pass() {
        CapturePass pass;
        try {
            pass = CapturePass.of(said, mode.mode());
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), e.getMessage(), e);
        }
        if (pass.records() && out == null) {
            throw new ParameterException(spec.commandLine(), SAID.say("capture-out"));
        }
        if (!pass.records() && (out != null || session != null)) {
            throw new ParameterException(spec.commandLine(), SAID.say("capture-record-only"));
        }
        return pass;
    }

    private int run(Terminal terminal, CapturePass pass, boolean check) {
        double tail = tail(pass);
        try (Programme sound = bearable(pass)) {
            CaptureRun run =
                    new CaptureRun(
                            terminal,
                            pass,
                            tail,
                            devices.ceiling(),
                            CaptureNote.ofReturn(sessionOptions.said()),
                            rate ->
                                    devices.open(
                                            common.layers(), rate, pass.plays(), pass.records()));
            int code = pass.records() ? run.recorded(sound, out, force) : run.played(sound);
            if (check && pass.records() && code == ExitCodes.DONE) {
                CaptureCheck.lines(sound, out, terminal).forEach(terminal::message);
            }
            return code;
        }
    }

    private double tail(CapturePass pass) {
        double tail = tailSeconds == null ? pass.usualTailSeconds() : tailSeconds;
        if (!(tail >= LEAST_TAIL_S && tail <= MOST_TAIL_S)) {
            throw new ParameterException(spec.commandLine(), SAID.say("capture-tail"));
        }
        return tail;
    }

    private Programme bearable(CapturePass pass) {
        LevelCeiling ceiling = devices.ceiling();
        Programme sound = ProgrammeFolder.open(programme);
        CueSheet sheet = sound.sheet();
        try {
            if (pass.plays()) {
                ceiling.check(
                        sheet.peakOf(sheet.loudestDb()),
                        SAID.say("the-programme"),
                        SAID.say("lower-reference"));
            }
            return sound;
        } catch (TooLoudException e) {
            sound.close();
            throw e;
        }
    }
}
