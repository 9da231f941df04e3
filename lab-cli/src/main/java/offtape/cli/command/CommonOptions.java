package offtape.cli.command;

import offtape.cli.terminal.Terminal;
import picocli.CommandLine.Option;

/** The options that every command takes. */
final class CommonOptions {

    @Option(names = "--quiet", description = "Print results and errors only.")
    private boolean quiet;

    @Option(names = "--verbose", description = "Print technical details of an error.")
    private boolean verbose;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Show this help and end.")
    private boolean help;

    Terminal terminal() {
        return Terminal.system(quiet);
    }
}
