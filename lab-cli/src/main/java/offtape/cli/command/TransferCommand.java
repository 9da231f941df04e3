package offtape.cli.command;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import offtape.cli.capture.StopSignal;
import offtape.cli.sound.LevelCeiling;
import offtape.cli.terminal.ExitCodes;
import offtape.cli.terminal.Interrupt;
import offtape.cli.terminal.Terminal;
import offtape.cli.transfer.PreEmphasis;
import offtape.cli.transfer.Stem;
import offtape.cli.transfer.StemList;
import offtape.cli.transfer.Transfer;
import offtape.cli.transfer.TransferEntry;
import offtape.cli.transfer.TransferLog;
import offtape.cli.transfer.TransferPlan;
import offtape.core.output.OutputFolder;
import offtape.core.text.Sentences;
import offtape.core.unit.Decibels;
import offtape.report.result.LadderSession;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Sends stems through the machine and brings them back. */
@Command(
        description =
                "Sends stems through the machine one after another and brings each back in time, at its"
                        + " level and of the same length. For machines with three heads, monitored off"
                        + " tape, and whatever else returns what it is sent. Stems that are done are"
                        + " skipped when the command is given again.",
        footer = {
            "",
            "Example: offtape transfer --session session --k3 1%% --out taped drums.wav",
            "",
            "Short glides sound before and behind each stem, and stems may be loud: turn",
            "loudspeakers and headphones down or off. Keep fingers, hair and sleeves away",
            "from moving reels. Recording erases what is on the tape.",
        })
final class TransferCommand implements Callable<Integer> {

    private static final Sentences SAID = Sentences.near(TransferCommand.class);

    /** How far the marks lie under the reference, where tape is far from its limits. */
    private static final double MARKS_DB = -6;

    private static final double LEAST_TAIL_S = 0.5;
    private static final double MOST_TAIL_S = 60;

    @Spec private CommandSpec spec;

    @Mixin private CommonOptions common;

    @Mixin private DeviceOptions devices;

    @Option(
            names = "--session",
            required = true,
            paramLabel = "SESSION",
            description = "Folder of the session in which the machine was measured.")
    private Path session;

    @Parameters(
            arity = "1..*",
            paramLabel = "STEM",
            description = "The stems: WAV, AIFF or FLAC, mono or stereo.")
    private List<Path> stems;

    @Option(
            names = "--out",
            required = true,
            paramLabel = "DIR",
            description =
                    "Folder for the returns, named as the stems, and the log transfer.json. It is"
                            + " written after each stem.")
    private Path out;

    @Mixin private DriveOptions drive;

    @Option(
            names = "--pre-emphasis",
            paramLabel = "FILE.wav",
            description =
                    "Impulse response of a filter before the machine, mono or stereo, at the stems'"
                            + " sample rate. Its delay stays in the return; one of minimum phase, as"
                            + " correct writes, has none.")
    private Path preEmphasis;

    @Option(
            names = "--float",
            description =
                    "Write 32-bit float in place of 24 bits. A return that 24 bits cannot hold is"
                            + " written so in any case.")
    private boolean isFloat;

    @Option(
            names = "--mono-from",
            paramLabel = "CHANNEL",
            description =
                    "Mono stems are sent to both channels and taken back from this one, left or right"
                            + " (default: left).")
    private MonoFrom monoFrom = MonoFrom.LEFT;

    @Option(
            names = "--tail",
            paramLabel = "SECONDS",
            description =
                    "How long to go on recording after each stem, 0.5 to 60 (default: 3), more than"
                            + " the machine's delay.")
    private double tailSeconds = 3;

    @Option(names = "--again", description = "Send stems again that are done.")
    private boolean again;

    @Option(names = "--force", description = "Overwrite files that are in the way.")
    private boolean force;

    /** Channels from which a mono stem can be taken back. */
    private enum MonoFrom {
        LEFT,
        RIGHT
    }

    @Override
    public Integer call() {
        Terminal terminal = common.terminal();
        LadderSession machine = LadderSession.read(session);
        TransferPlan plan = plan(machine);
        StemList list = new StemList(stems, out);
        String[] names =
                Stream.concat(Stream.of(TransferLog.FILE), Stream.of(list.outputs()))
                        .toArray(String[]::new);
        StopSignal stop = new StopSignal();
        // opened first and so closed last, when all is in order
        try (Interrupt interrupt = Interrupt.guard();
                OutputFolder folder = OutputFolder.open(out, force, names)) {
            interrupt.first(stop::give);
            TransferWords words = new TransferWords(terminal, stems.size());
            List<Stem> all = list.read(plan.preEmphasis());
            all.forEach(words::notes);
            TransferLog log =
                    TransferLog.in(
                            folder.directory(), machine.machineName(), machine.recordingSha256());
            List<TransferEntry> ended =
                    new Transfer(
                                    plan,
                                    rate -> devices.open(common.layers(), rate),
                                    folder,
                                    log,
                                    stop,
                                    words)
                            .send(all);
            words.end(ended, out, stop.isGiven());
            if (stop.isGiven()) {
                return ExitCodes.INTERRUPTED;
            }
            return ended.stream().allMatch(TransferEntry::isDone)
                    ? ExitCodes.DONE
                    : ExitCodes.UNUSABLE_INPUT;
        }
    }

    private double tail() {
        if (!(tailSeconds >= LEAST_TAIL_S && tailSeconds <= MOST_TAIL_S)) {
            throw new ParameterException(spec.commandLine(), SAID.say("transfer-tail"));
        }
        return tailSeconds;
    }

    private TransferPlan plan(LadderSession machine) {
        LevelCeiling ceiling = devices.ceiling();
        double markDbfs = Math.min(drive.referenceDbfs(machine) + MARKS_DB, ceiling.dbfs());
        return new TransferPlan(
                drive.drive(machine),
                preEmphasis == null ? null : PreEmphasis.read(preEmphasis),
                Decibels.toAmplitude(markDbfs),
                ceiling,
                tail(),
                isFloat,
                monoFrom == MonoFrom.RIGHT,
                again);
    }
}
