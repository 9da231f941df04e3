package offtape.cli.command;

import java.io.BufferedReader;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.function.BiFunction;
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
        return run(Commands.systemLayers(), args);
    }

    /** The same with made-up sound devices. */
    static Outcome run(SoundLayers layers, Object... args) {
        return run(layers, FORGETFUL, args);
    }

    /** The same with settings that are remembered from one call to the next. */
    static Outcome run(SoundLayers layers, SettingsFile settings, Object... args) {
        return run((out, err) -> Terminal.of(out, err, false), layers, settings, args);
    }

    /** The same with somebody at the terminal, whose answers are the lines of a text. */
    static Outcome answering(SoundLayers layers, String answers, Object... args) {
        return run(
                (out, err) -> Terminal.of(out, err, new BufferedReader(new StringReader(answers))),
                layers,
                FORGETFUL,
                args);
    }

    private static Outcome run(
            BiFunction<PrintStream, PrintStream, Terminal> terminals,
            SoundLayers layers,
            SettingsFile settings,
            Object... args) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        Terminal terminal = terminals.apply(stream(out), stream(err));
        String[] words = Arrays.stream(args).map(Object::toString).toArray(String[]::new);
        int code = Commands.run(terminal, layers, settings, words);
        return new Outcome(
                code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    private static PrintStream stream(ByteArrayOutputStream into) {
        return new PrintStream(into, true, StandardCharsets.UTF_8);
    }
}
