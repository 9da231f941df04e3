package offtape.cli.command;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import offtape.cli.settings.SettingsFile;
import offtape.cli.sound.SoundLayers;
import offtape.cli.terminal.Terminal;

/** The command as a user meets it: arguments in, exit code and words out. */
final class Tool {

    /** Below a file nothing can be remembered: tests leave the user's settings alone. */
    static final SettingsFile FORGETFUL = SettingsFile.at(Path.of("pom.xml", "settings.json"));

    private Tool() {}

    /** What a command left: its exit code, standard output and standard error. */
    record Outcome(int code, String out, String err) {}

    /** Runs a command with its streams caught, as if neither were a terminal. */
    static Outcome run(Object... args) {
        return run(SoundLayers.ofSystem(), args);
    }

    /** The same with made-up sound devices. */
    static Outcome run(SoundLayers layers, Object... args) {
        return run(layers, FORGETFUL, args);
    }

    /** The same with settings that are remembered from one call to the next. */
    static Outcome run(SoundLayers layers, SettingsFile settings, Object... args) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        Terminal terminal = Terminal.of(stream(out), stream(err), false);
        String[] words = Arrays.stream(args).map(Object::toString).toArray(String[]::new);
        int code = Commands.run(terminal, layers, settings, words);
        return new Outcome(
                code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    private static PrintStream stream(ByteArrayOutputStream into) {
        return new PrintStream(into, true, StandardCharsets.UTF_8);
    }
}
