package offtape.cli.manual;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import picocli.CommandLine.Help;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;

/** The manual page of one command, made of what its help is made of. */
final class ManualPage {

    private static final List<List<String>> EXIT_CODES =
            List.of(
                    List.of("0", "Done."),
                    List.of("1", "A limit is failed; only with --fail-on-limit."),
                    List.of("2", "Wrong usage, or an output that may not be written."),
                    List.of("3", "An input that cannot be used."),
                    List.of("4", "Trouble with a sound device."),
                    List.of("70", "An internal fault."),
                    List.of("130", "Ended by Ctrl-C."));

    private final CommandSpec command;
    private final Roff page = new Roff();

    private ManualPage(CommandSpec command) {
        this.command = command;
    }

    /**
     * The page.
     *
     * @param date day of the software, such as 2026-01-01
     * @param software name and version
     */
    static String of(CommandSpec command, String date, String software) {
        return new ManualPage(command).text(date, software);
    }

    /** The name under which the page is found, such as {@code offtape-measure}. */
    static String name(CommandSpec command) {
        return command.qualifiedName("-");
    }

    private String text(String date, String software) {
        String description = String.join(" ", command.usageMessage().description());
        page.title(name(command).toUpperCase(Locale.ROOT), date, software);
        page.section("NAME").line(name(command) + " - " + summary(command));
        page.section("SYNOPSIS");
        synopsis();
        page.section("DESCRIPTION").line(description);
        parameters();
        commands();
        footer();
        surroundings();
        seeAlso();
        return page.toString();
    }

    /** What a command does in a few words, as it stands behind a name. */
    private static String summary(CommandSpec command) {
        String first = Summary.of(command.usageMessage().description());
        boolean word = Character.isLowerCase(first.charAt(1)) || first.startsWith("A ");
        return word ? Character.toLowerCase(first.charAt(0)) + first.substring(1) : first;
    }

    private void synopsis() {
        String[] words = help().synopsis(0).strip().split("\\s+");
        int named = command.qualifiedName().split(" ").length;
        page.bold(command.qualifiedName());
        for (String word : List.of(words).subList(named, words.length)) {
            page.plain(" ").asTyped(word);
        }
        page.end();
    }

    private Help help() {
        return new Help(command, Help.defaultColorScheme(Ansi.OFF));
    }

    private void parameters() {
        if (!command.positionalParameters().isEmpty()) {
            page.section("ARGUMENTS");
            for (PositionalParamSpec p : command.positionalParameters()) {
                page.entry(new Roff().italic(p.paramLabel()), text(p));
            }
        }
        page.section("OPTIONS");
        command.options().stream()
                .filter(o -> !o.hidden())
                .sorted(Comparator.comparing(OptionSpec::longestName))
                .forEach(o -> page.entry(names(o), text(o)));
    }

    private static Roff names(OptionSpec option) {
        Roff names = new Roff();
        String parting = "";
        for (String name : option.names()) {
            names.plain(parting).bold(name);
            parting = ", ";
        }
        if (option.arity().max() > 0) {
            names.plain("=").italic(option.paramLabel());
        }
        return names;
    }

    private static String text(ArgSpec argument) {
        return String.join(" ", argument.description());
    }

    private void commands() {
        if (command.subcommands().isEmpty()) {
            return;
        }
        page.section("COMMANDS");
        command.subcommands()
                .forEach(
                        (name, line) ->
                                page.entry(
                                        new Roff().bold(name),
                                        String.join(
                                                " ",
                                                line.getCommandSpec()
                                                        .usageMessage()
                                                        .description())));
    }

    private void footer() {
        Footer footer = Footer.of(command);
        if (!footer.examples().isEmpty()) {
            page.section("EXAMPLES").literal(footer.examples());
        }
        if (!footer.remarks().isEmpty()) {
            page.section("NOTES");
            for (int i = 0; i < footer.remarks().size(); i++) {
                (i == 0 ? page : page.paragraph()).line(footer.remarks().get(i));
            }
        }
    }

    private void surroundings() {
        page.section("EXIT STATUS");
        EXIT_CODES.forEach(row -> page.entry(new Roff().bold(row.get(0)), row.get(1)));
        page.section("ENVIRONMENT");
        page.entry(
                new Roff().bold("NO_COLOR"), "If it is set to anything, no colours are written.");
        page.entry(
                new Roff().bold("OFFTAPE_JAVA_OPTS"),
                "Further options for the Java machine, such as -Xmx4g.");
    }

    private void seeAlso() {
        CommandSpec root = command.root();
        List<String> others =
                Stream.concat(
                                Stream.of(root),
                                root.subcommands().values().stream().map(l -> l.getCommandSpec()))
                        .filter(c -> c != command)
                        .map(ManualPage::name)
                        .toList();
        page.section("SEE ALSO");
        for (int i = 0; i < others.size(); i++) {
            page.bold(others.get(i)).plain("(1)" + (i + 1 < others.size() ? "," : "")).end();
        }
    }
}
