package offtape.cli;

import offtape.cli.command.Commands;

/** The entry point of the {@code offtape} command. */
public final class Main {

    private Main() {}

    /** Runs one command and ends the process with its exit code. */
    public static void main(String[] args) {
        System.exit(Commands.run(args));
    }
}
