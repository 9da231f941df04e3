package offtape.cli.command;

import offtape.cli.sound.SoundLayers;
import offtape.cli.terminal.Terminal;
import offtape.core.text.Language;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The options that every command takes. */
@Command(versionProvider = Version.class)
final class CommonOptions {

    @Spec(Spec.Target.MIXEE)
    private CommandSpec command;

    @Option(names = "--quiet", description = "Print results and errors only.")
    private boolean quiet;

    @Option(
            names = "--verbose",
            description =
                    "Print technical details of an error, and where the time of a measurement"
                            + " went.")
    private boolean verbose;

    @Option(
            names = HelpLanguage.OPTION,
            paramLabel = "LANGUAGE",
            converter = LanguageConverter.class,
            description =
                    "Language of pages, messages and help: ${COMPLETION-CANDIDATES}. Results and"
                            + " tables are the same in all of them.",
            completionCandidates = LanguageConverter.Codes.class)
    private Language language;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Show this help and end.")
    private boolean help;

    @Option(
            names = {"-V", "--version"},
            versionHelp = true,
            description = "Print the version and end.")
    private boolean version;

    /** The ways to sound devices. */
    SoundLayers layers() {
        return root().layers();
    }

    /** Whether technical details of an error are wanted. */
    boolean isVerbose() {
        return verbose;
    }

    /** The language that readers are spoken to in. */
    Language language() {
        return language == null ? root().language() : language;
    }

    private OfftapeCommand root() {
        return (OfftapeCommand) command.root().userObject();
    }

    Terminal terminal() {
        Terminal terminal = root().terminal();
        terminal.setQuiet(quiet);
        terminal.setVerbose(verbose);
        terminal.setLanguage(language());
        return terminal;
    }
}
