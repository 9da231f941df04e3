package offtape.cli.command;

import offtape.cli.terminal.ExitCodes;
import offtape.cli.terminal.Terminal;
import offtape.core.fault.RefusedOutputException;
import offtape.core.fault.UnusableInputException;
import picocli.CommandLine;
import picocli.CommandLine.ParseResult;

/** Parses the arguments, runs the command and turns what went wrong into words and exit codes. */
public final class Commands {

    private Commands() {}

    /** Runs one command; returns its exit code. */
    public static int run(String... args) {
        CommandLine line = new CommandLine(new OfftapeCommand());
        line.setCaseInsensitiveEnumValuesAllowed(true);
        line.setUsageHelpAutoWidth(true);
        line.setParameterExceptionHandler((e, a) -> usage(e));
        line.setExecutionExceptionHandler(Commands::failed);
        return line.execute(args);
    }

    private static int usage(CommandLine.ParameterException e) {
        String command = e.getCommandLine().getCommandSpec().qualifiedName(" ");
        Terminal.system(false).error(sentence(e.getMessage()) + " See \"" + command + " --help\".");
        return ExitCodes.USAGE;
    }

    private static String sentence(String text) {
        return text.endsWith(".") ? text : text + ".";
    }

    private static int failed(Exception e, CommandLine line, ParseResult parsed) {
        Terminal terminal = Terminal.system(false);
        boolean verbose = parsed.expandedArgs().contains("--verbose");
        if (verbose) {
            terminal.trace(e);
        }
        if (e instanceof UnusableInputException) {
            terminal.error(e.getMessage());
            return ExitCodes.UNUSABLE_INPUT;
        }
        if (e instanceof RefusedOutputException) {
            terminal.error(e.getMessage());
            return ExitCodes.USAGE;
        }
        terminal.error(
                "An internal fault ended the command ("
                        + e.getClass().getSimpleName()
                        + "). Run it again with --verbose and report what it prints.");
        return ExitCodes.INTERNAL;
    }
}
