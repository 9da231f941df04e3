package offtape.cli.command;

import offtape.cli.settings.SettingsFile;
import offtape.cli.sound.SoundLayers;
import offtape.cli.terminal.Terminal;
import offtape.core.text.Language;
import offtape.core.text.Sentences;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The command itself: names the commands below it. */
@Command(
        name = "offtape",
        description = "A measurement lab for tape machines.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        synopsisSubcommandLabel = "COMMAND",
        footer = {
            "",
            "Without a command, at a terminal, it leads through the measuring of a machine.",
            "Example: offtape demo",
            "Help on one command: offtape measure --help",
        })
final class OfftapeCommand implements Runnable {

    private static final Sentences SAID = Sentences.near(OfftapeCommand.class);

    private final Terminal terminal;
    private final SoundLayers layers;
    private final SettingsFile settings;

    @Spec private CommandSpec spec;

    /** Hidden, since each command lists it; before a command it holds for that command. */
    @Option(
            names = HelpLanguage.OPTION,
            paramLabel = "LANGUAGE",
            converter = LanguageConverter.class,
            defaultValue = "en",
            hidden = true)
    private Language language;

    OfftapeCommand(Terminal terminal, SoundLayers layers, SettingsFile settings) {
        this.terminal = terminal;
        this.layers = layers;
        this.settings = settings;
    }

    /** Where the words of all commands go. */
    Terminal terminal() {
        return terminal;
    }

    /** The ways to sound devices. */
    SoundLayers layers() {
        return layers;
    }

    /** The language that readers are spoken to in if a command is not told another. */
    Language language() {
        return language;
    }

    /** What is remembered for the user. */
    SettingsFile settings() {
        return settings;
    }

    @Override
    public void run() {
        throw new CommandLine.ParameterException(spec.commandLine(), SAID.say("name-command"));
    }
}
