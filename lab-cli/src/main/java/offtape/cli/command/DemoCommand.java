package offtape.cli.command;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import offtape.cli.terminal.ExitCodes;
import offtape.cli.terminal.Terminal;
import offtape.core.output.OutputFolder;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The whole job on a simulated machine. */
@Command(
        description =
                "The whole job on a simulated second-hand machine, before and after a service:"
                        + " programme, return, figures, reports. Needs no sound hardware and takes some"
                        + " seconds.",
        footer = {"", "Example: offtape demo --out my-demo"})
final class DemoCommand implements Callable<Integer> {

    @Mixin private CommonOptions common;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            description = "Folder to write to (default: ${DEFAULT-VALUE}).")
    private Path out = Path.of("offtape-demo");

    @Option(names = "--force", description = "Overwrite files that are in the way.")
    private boolean force;

    @Override
    public Integer call() {
        Terminal terminal = common.terminal();
        try (OutputFolder folder = OutputFolder.open(out, force, Demo.COMPARISON)) {
            Demo.Outcome outcome = new Demo(folder, terminal, common.language()).run();
            folder.commit();
            DemoWords words = new DemoWords(terminal);
            words.lines(outcome).forEach(terminal::result);
            terminal.result("");
            words.next(out).forEach(terminal::result);
        }
        return ExitCodes.DONE;
    }
}
