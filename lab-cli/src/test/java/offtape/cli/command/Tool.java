package offtape.cli.command;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import offtape.cli.sound.SoundLayers;
import offtape.cli.terminal.Terminal;

/** The command as a user meets it: arguments in, exit code and words out. */
final class Tool {

    private Tool() {}

    /** What a command left: its exit code, standard output and standard error. */
    record Outcome(int code, String out, String err) {}

    /** Runs a command with its streams caught, as if neither were a terminal. */
    static Outcome run(Object... args) {
        return run(Commands.systemLayers(), args);
    }

    /** The same with made-up sound devices. */
    static Outcome run(SoundLayers layers, Object... args) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        Terminal terminal = Terminal.of(stream(out), stream(err), false);
        String[] words = Arrays.stream(args).map(Object::toString).toArray(String[]::new);
        int code = Commands.run(terminal, layers, words);
        return new Outcome(
                code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    private static PrintStream stream(ByteArrayOutputStream into) {
        return new PrintStream(into, true, StandardCharsets.UTF_8);
    }
}
