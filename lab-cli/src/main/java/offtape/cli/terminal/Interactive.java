package offtape.cli.terminal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;

/**
 * Decides whether standard streams lead to a terminal, and whether it may receive control
 * characters.
 */
final class Interactive {

    private static final Path STANDARD_INPUT = Path.of("/proc/self/fd/0");
    private static final Path STANDARD_ERROR = Path.of("/proc/self/fd/2");

    private Interactive() {}

    /** For this process. */
    static boolean standardError() {
        return System.console() != null
                && allowed(System.getenv())
                && leadsToTerminal(STANDARD_ERROR);
    }

    /** Whether somebody can be asked: questions are shown and answers can be typed. */
    static boolean questions() {
        return System.console() != null
                && leadsToTerminal(STANDARD_INPUT)
                && leadsToTerminal(STANDARD_ERROR);
    }

    /** Whether a picture can be drawn over and over, and keys be read one by one. */
    static boolean keys() {
        return questions() && !"dumb".equals(System.getenv().getOrDefault("TERM", "dumb"));
    }

    /** Whether the environment allows control characters. */
    static boolean allowed(Map<String, String> environment) {
        return environment.getOrDefault("NO_COLOR", "").isEmpty()
                && !"dumb".equals(environment.get("TERM"));
    }

    // the console speaks for standard input and output only; where the system tells, ask it
    private static boolean leadsToTerminal(Path stream) {
        if (!Files.isSymbolicLink(stream)) {
            return true;
        }
        try {
            return isTerminal(Files.readSymbolicLink(stream).toString());
        } catch (IOException e) {
            return false;
        }
    }

    /** Whether what a stream is connected to is a terminal. */
    static boolean isTerminal(String device) {
        return device.startsWith("/dev/pts/")
                || device.startsWith("/dev/tty")
                || device.equals("/dev/console");
    }
}
