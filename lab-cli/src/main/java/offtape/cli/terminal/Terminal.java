package offtape.cli.terminal;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/**
 * Where words go: figures to standard output, messages and progress to standard error. Everything
 * is UTF-8. Progress is redrawn in place on a terminal and written as plain lines elsewhere.
 */
public final class Terminal {

    private final PrintStream out;
    private final PrintStream err;
    private final boolean interactive;
    private final boolean quiet;
    private boolean progressShown;

    private Terminal(PrintStream out, PrintStream err, boolean interactive, boolean quiet) {
        this.out = out;
        this.err = err;
        this.interactive = interactive;
        this.quiet = quiet;
    }

    /** The process's own streams; {@code quiet} leaves only results and errors. */
    public static Terminal system(boolean quiet) {
        return new Terminal(
                new PrintStream(
                        new FileOutputStream(FileDescriptor.out), true, StandardCharsets.UTF_8),
                new PrintStream(
                        new FileOutputStream(FileDescriptor.err), true, StandardCharsets.UTF_8),
                System.console() != null && System.getenv("NO_COLOR") == null,
                quiet);
    }

    /** Prints a result to standard output. */
    public void result(String text) {
        endProgress();
        out.println(text);
    }

    /** Prints text to standard output as it is, without a line end of its own. */
    public void raw(String text) {
        endProgress();
        out.print(text);
        out.flush();
    }

    /** Prints a message to standard error, unless quiet. */
    public void message(String text) {
        if (!quiet) {
            endProgress();
            err.println(text);
        }
    }

    /** Prints an error to standard error. */
    public void error(String text) {
        endProgress();
        err.println("offtape: " + text);
    }

    /** Prints the trace of a fault to standard error, for verbose output. */
    public void trace(Throwable fault) {
        endProgress();
        fault.printStackTrace(err);
    }

    /** Shows what is being done: step {@code done} of {@code all}. */
    public void progress(int done, int all, String what) {
        if (quiet) {
            return;
        }
        String line = String.format("[%d/%d] %s", done, all, what);
        if (interactive) {
            err.print("\r\u001b[K" + line);
            err.flush();
            progressShown = true;
        } else {
            err.println(line);
        }
    }

    private void endProgress() {
        if (progressShown) {
            err.print("\r\u001b[K");
            err.flush();
            progressShown = false;
        }
    }
}
