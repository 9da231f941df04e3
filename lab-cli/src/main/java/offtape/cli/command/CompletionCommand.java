package offtape.cli.command;

import java.util.concurrent.Callable;
import offtape.cli.manual.Shell;
import offtape.cli.terminal.ExitCodes;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Prints what a shell needs to complete the words of the commands. */
@Command(
        description =
                "Prints a script by which a shell completes commands, options and names of files"
                        + " when the tab key is pressed.",
        footer = {
            "",
            "Example: offtape completion bash",
            "",
            "For the running shell, and in ~/.bashrc or ~/.zshrc for each new one:",
            "source <(offtape completion bash)",
        })
final class CompletionCommand implements Callable<Integer> {

    @Mixin private CommonOptions common;

    @Parameters(paramLabel = "SHELL", description = "The shell: ${COMPLETION-CANDIDATES}.")
    private Shell shell;

    @Override
    public Integer call() {
        common.terminal().raw(shell.completion(Commands.described()));
        return ExitCodes.DONE;
    }
}
