package offtape.cli.command;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import offtape.cli.terminal.ExitCodes;
import offtape.cli.terminal.Terminal;
import offtape.core.machine.spec.MachineSpec;
import offtape.core.output.OutputFile;
import offtape.core.programme.Programme;
import offtape.core.programme.ProgrammeFolder;
import offtape.core.text.Sentences;
import offtape.core.transport.CaptureMode;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Passes a programme through a simulated machine. */
@Command(
        description =
                "Passes a programme through a simulated tape machine whose every property is known,"
                        + " and writes the return with its truth beside it: FILE.truth.json and"
                        + " FILE.motion.csv.",
        footer = {
            "",
            "Example: offtape simulate --programme programme --machine machine.json \\",
            "           --out return.wav",
            "",
            "The same tape replayed again: --replay 2, --replay 3 and so on.",
            "",
            "The smallest machine is {\"format\": \"offtape-machine\", \"version\": 1}: it changes",
            "nothing. What can stand in the file is listed in DEVELOPERS.md.",
        })
final class SimulateCommand implements Callable<Integer> {

    private static final Sentences SAID = Sentences.near(SimulateCommand.class);

    @Mixin private CommonOptions common;

    @Option(
            names = "--programme",
            required = true,
            paramLabel = "DIR",
            description = "The folder with the programme to play.")
    private Path programme;

    @Option(
            names = "--machine",
            required = true,
            paramLabel = "SPEC.json",
            description = "The description of the machine.")
    private Path machine;

    @Option(
            names = "--out",
            required = true,
            paramLabel = "FILE.wav",
            description = "The return to write.")
    private Path out;

    @Option(
            names = "--mode",
            paramLabel = "MODE",
            converter = CaptureModeConverter.class,
            description =
                    "reference-tape, two-pass, off-tape or loopback, in place of the description's.")
    private CaptureMode mode;

    @Option(
            names = "--replay",
            paramLabel = "N",
            description =
                    "Replay the same recording another time: 1 is the first, in place of the"
                            + " description's. What lies on the tape stays, what the replay adds is"
                            + " drawn anew.")
    private Integer replay;

    @Option(names = "--force", description = "Overwrite files that are in the way.")
    private boolean force;

    @Spec private CommandSpec commandSpec;

    @Override
    public Integer call() {
        if (replay != null && (replay < 1 || replay > MachineSpec.MOST_REPLAYS)) {
            throw new ParameterException(
                    commandSpec.commandLine(), SAID.say("replay-range", MachineSpec.MOST_REPLAYS));
        }
        Terminal terminal = common.terminal();
        Speech speech = Speech.of(terminal);
        MachineSpec said = MachineSpec.fromJson(machine);
        MachineSpec inMode = mode == null ? said : said.withMode(mode);
        MachineSpec spec = replay == null ? inMode : inMode.withReplay(replay);
        Path name = out.getFileName();
        try (OutputFile file =
                        OutputFile.open(
                                out,
                                force,
                                Simulation.truthName(name),
                                Simulation.motionName(name));
                Programme sound = ProgrammeFolder.open(programme)) {
            terminal.progress(1, 1, speech.say("programme.simulating"));
            Simulation.run(sound, spec, file);
            file.commit();
        }
        terminal.message(speech.say("programme.simulated", out, Simulation.truthName(name)));
        return ExitCodes.DONE;
    }
}
