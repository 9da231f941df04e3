package offtape.cli.command;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import offtape.cli.guide.Guide;
import offtape.cli.guide.PageOpener;
import offtape.cli.settings.SettingsFile;
import offtape.cli.sound.JavaSoundLayer;
import offtape.cli.sound.SoundLayers;
import offtape.cli.sound.SoundTroubleException;
import offtape.cli.sound.TooLoudException;
import offtape.cli.sound.portaudio.PortAudioLayer;
import offtape.cli.terminal.ExitCodes;
import offtape.cli.terminal.Terminal;
import offtape.core.fault.RefusedOutputException;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.Sentences;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.TypeConversionException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Parses the arguments, runs the command and turns what went wrong into words and exit codes. */
public final class Commands {

    private static final Sentences SAID = Sentences.near(Commands.class);

    /** How the library begins what it says of a value that cannot be read. */
    private static final String INVALID = "Invalid value for ";

    private final Terminal terminal;
    private final SoundLayers layers;
    private final SettingsFile settings;

    private Commands(Terminal terminal, SoundLayers layers, SettingsFile settings) {
        this.terminal = terminal;
        this.layers = layers;
        this.settings = settings;
    }

    /** Runs one command on the process's own streams; returns its exit code. */
    public static int run(String... args) {
        return run(Terminal.system(), args);
    }

    /** Runs one command; returns its exit code. */
    public static int run(Terminal terminal, String... args) {
        return run(terminal, systemLayers(), SettingsFile.ofUser(), args);
    }

    /** The ways to this computer's sound devices; none is looked at before it is used. */
    static SoundLayers systemLayers() {
        return new SoundLayers(List.of(new JavaSoundLayer(), new PortAudioLayer()));
    }

    /** Runs one command with given ways to sound devices and settings; returns its exit code. */
    public static int run(
            Terminal terminal, SoundLayers layers, SettingsFile settings, String... args) {
        return new Commands(terminal, layers, settings).execute(args);
    }

    /** The command with all below it, to be described and not to be run. */
    public static CommandSpec described() {
        return line(Terminal.system(), systemLayers(), SettingsFile.ofUser()).getCommandSpec();
    }

    /**
     * The command line, not yet parsed, with the commands that the words can lead to; with all of
     * them if there are no words.
     */
    static CommandLine line(
            Terminal terminal, SoundLayers layers, SettingsFile settings, String... words) {
        CommandLine line = new CommandLine(new OfftapeCommand(terminal, layers, settings));
        Subcommands.addTo(line, HelpLanguage.behind(words));
        HelpLanguage.set(line, HelpLanguage.of(words));
        line.setCaseInsensitiveEnumValuesAllowed(true);
        // a file name may begin with @
        line.setExpandAtFiles(false);
        line.setUsageHelpAutoWidth(terminal.isInteractive());
        line.setColorScheme(
                CommandLine.Help.defaultColorScheme(
                        terminal.isInteractive() ? Ansi.AUTO : Ansi.OFF));
        line.registerConverter(Path.class, Commands::path);
        line.registerConverter(int.class, Commands::wholeNumber);
        line.registerConverter(double.class, Commands::number);
        line.registerConverter(Double.class, Commands::number);
        line.setOut(terminal.writer());
        return line;
    }

    private static Path path(String text) {
        try {
            return Path.of(text);
        } catch (InvalidPathException e) {
            throw new TypeConversionException(
                    SAID.say("no-file-name", text) + " " + SAID.say("set-locale"));
        }
    }

    private static int wholeNumber(String text) {
        try {
            return Integer.parseInt(text);
        } catch (NumberFormatException e) {
            throw new TypeConversionException(SAID.say("no-whole-number", text));
        }
    }

    private static double number(String text) {
        try {
            return Double.parseDouble(text);
        } catch (NumberFormatException e) {
            throw new TypeConversionException(SAID.say("no-number", text));
        }
    }

    private int execute(String... args) {
        terminal.setLanguage(HelpLanguage.of(args));
        return HelpLanguage.isAllOf(args) && terminal.hasAnswers() ? guide() : command(args);
    }

    private int guide() {
        return new Guide(
                        terminal,
                        layers,
                        words -> command(words.toArray(String[]::new)),
                        PageOpener::open,
                        Path.of(""))
                .run();
    }

    private int command(String... args) {
        boolean verbose = Arrays.asList(args).contains("--verbose");
        terminal.setLanguage(HelpLanguage.of(args));
        CommandLine line = line(terminal, layers, settings, args);
        line.setParameterExceptionHandler((e, a) -> usage(e));
        line.setExecutionExceptionHandler((e, l, p) -> failed(e, verbose));
        try {
            return line.execute(args);
        } catch (OutOfMemoryError e) {
            return internal(speech().say("errors.memory"), e, verbose);
        } catch (Error e) {
            return failed(e, verbose);
        }
    }

    private int usage(CommandLine.ParameterException e) {
        String command = e.getCommandLine().getCommandSpec().qualifiedName(" ");
        terminal.error(speech().say("errors.see", sentence(words(e)), command));
        return ExitCodes.USAGE;
    }

    private String words(CommandLine.ParameterException e) {
        if (!(e instanceof UnmatchedArgumentException unmatched)) {
            return refusal(e);
        }
        String first = unmatched.getUnmatched().get(0);
        if (first.startsWith("-")) {
            return speech().say("errors.no-option", first);
        }
        return e.getCommandLine().getParent() == null
                ? speech().say("errors.no-command", first)
                : speech().say("errors.one-word-more", first);
    }

    /** What is wrong with a value is ours and may be several sentences; the rest the library's. */
    private String refusal(CommandLine.ParameterException e) {
        String text = e.getMessage();
        if (e.getCause() instanceof TypeConversionException value
                && text.startsWith(INVALID)
                && text.endsWith(": " + value.getMessage())) {
            String place =
                    text.substring(
                            INVALID.length(), text.length() - value.getMessage().length() - 2);
            return speech().say(
                            "errors.invalid-value",
                            terminal.told(place),
                            terminal.told(value.getMessage()));
        }
        return terminal.told(text);
    }

    private Speech speech() {
        return Speech.of(terminal);
    }

    private static String sentence(String text) {
        return text.endsWith(".") ? text : text + ".";
    }

    private int failed(Throwable e, boolean verbose) {
        if (e instanceof UnusableInputException) {
            return refused(e, ExitCodes.UNUSABLE_INPUT, verbose);
        }
        if (e instanceof RefusedOutputException || e instanceof TooLoudException) {
            return refused(e, ExitCodes.USAGE, verbose);
        }
        if (e instanceof SoundTroubleException) {
            return refused(e, ExitCodes.SOUND_DEVICE, verbose);
        }
        return internal(e.getClass().getSimpleName(), e, verbose);
    }

    private int refused(Throwable e, int code, boolean verbose) {
        trace(e, verbose);
        terminal.error(terminal.told(e.getMessage()));
        return code;
    }

    private int internal(String what, Throwable e, boolean verbose) {
        trace(e, verbose);
        terminal.error(speech().say("errors.internal", what));
        return ExitCodes.INTERNAL;
    }

    private void trace(Throwable e, boolean verbose) {
        if (verbose) {
            terminal.trace(e);
        }
    }
}
