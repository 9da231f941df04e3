package offtape.cli.manual;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import offtape.cli.command.Commands;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;

/** What is said of the commands in manual pages and to shells. */
class ManualTest {

    private static final CommandSpec ROOT = Commands.described();
    private static final Map<String, String> PAGES =
            Manual.pages(ROOT, "2026-01-01", "Offtape 0.1.0");

    /** Requests of man(7) and of the formatter that a page may hold, as groff's manual has them. */
    private static final Set<String> REQUESTS =
            Set.of(".TH", ".SH", ".PP", ".TP", ".nf", ".fi", ".nh");

    private static CommandSpec command() {
        CommandSpec command = CommandSpec.create().name("turn");
        command.usageMessage()
                .description("Turns: a knob. By 3 \u00b5m, 'so' to say.")
                .footer(
                        "",
                        "Example: offtape turn --far \\",
                        "           left",
                        "Another one:",
                        "  offtape turn right",
                        "",
                        "'Not' too far,",
                        "or it breaks.");
        command.addOption(
                OptionSpec.builder("--far")
                        .paramLabel("WAY")
                        .type(Path.class)
                        .description("How far: [none] or it's all.")
                        .build());
        command.addPositional(
                PositionalParamSpec.builder().paramLabel("KNOB").description("Which.").build());
        CommandSpec root = CommandSpec.create().name("offtape");
        new CommandLine(root).addSubcommand("turn", command);
        return command;
    }

    @Test
    void everyCommandHasAPageThatNamesAllItsOptions() {
        assertEquals(ROOT.subcommands().size() + 1, PAGES.size());
        ROOT.subcommands()
                .forEach(
                        (name, line) -> {
                            String page = PAGES.get("share/man/man1/offtape-" + name + ".1");
                            line.getCommandSpec()
                                    .optionsMap()
                                    .keySet()
                                    .forEach(
                                            o ->
                                                    assertTrue(
                                                            page.contains(
                                                                    "\\fB"
                                                                            + o.replace("-", "\\-")
                                                                            + "\\fR"),
                                                            name + " " + o));
                        });
    }

    @Test
    void nothingInATextIsTakenForARequest() {
        Set<String> requests = new TreeSet<>();
        PAGES.values().stream()
                .flatMap(String::lines)
                .filter(l -> l.startsWith(".") || l.startsWith("'"))
                .forEach(l -> requests.add(l.split(" ")[0]));
        assertEquals(new TreeSet<>(REQUESTS), requests);
        assertTrue(
                PAGES.values().stream().allMatch(p -> p.chars().allMatch(c -> c < 0x80)),
                "what is not ASCII depends on the reader's settings");
    }

    /** Written by hand after man(7) and groff_char(7). */
    @Test
    void aPageIsPutTogetherOfTheHelp() {
        String page = ManualPage.of(command(), "2026-01-01", "Offtape 1");
        String begin =
                """
                .TH "OFFTAPE-TURN" "1" "2026-01-01" "Offtape 1" "User commands"
                .nh
                .SH "NAME"
                offtape-turn - turns: a knob
                .SH "SYNOPSIS"
                \\fBofftape turn\\fR [\\-\\-far=WAY] KNOB
                .SH "DESCRIPTION"
                Turns: a knob. By 3 \\[u00B5]m, \\(aqso\\(aq to say.
                .SH "ARGUMENTS"
                .TP
                \\fIKNOB\\fR
                Which.
                .SH "OPTIONS"
                .TP
                \\fB\\-\\-far\\fR=\\fIWAY\\fR
                How far: [none] or it\\(aqs all.
                .SH "EXAMPLES"
                .nf
                offtape turn \\-\\-far \\e
                           left
                Another one:
                  offtape turn right
                .fi
                .SH "NOTES"
                \\(aqNot\\(aq too far, or it breaks.
                """;
        assertEquals(begin, page.substring(0, page.indexOf(".SH \"EXIT STATUS\"")));
    }

    @Test
    void aLineThatBeginsWithAFullStopIsGuarded() {
        assertEquals("\\&.hidden\n", new Roff().line(".hidden").toString());
    }

    /** Brackets and colons part the words of zsh's _arguments; quotes end them. */
    @Test
    void zshGetsTextsThatItDoesNotTakeForItsOwnSigns() {
        String script = Shell.ZSH.completion(command().root());
        assertTrue(
                script.contains(
                        "'(--far)--far=[How far\\: \\[none\\] or it'\\''s all]:WAY:_files'"),
                script);
        assertTrue(script.contains("'1:KNOB: '"), script);
        assertTrue(script.startsWith("#compdef offtape\n"));
    }

    @Test
    void shellsAreToldOfAllCommandsAndOptions() {
        List<String> words =
                ROOT.subcommands().entrySet().stream()
                        .flatMap(e -> e.getValue().getCommandSpec().optionsMap().keySet().stream())
                        .distinct()
                        .collect(Collectors.toList());
        words.addAll(ROOT.subcommands().keySet());
        assertFalse(words.isEmpty());
        for (Shell shell : Shell.values()) {
            String script = shell.completion(ROOT);
            assertEquals(
                    List.of(),
                    words.stream().filter(w -> !script.contains(w)).toList(),
                    "" + shell);
        }
    }
}
