package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import offtape.cli.settings.SettingsFile;
import offtape.cli.terminal.Terminal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;

/** What every command has: help with an example that is true, a version, common options. */
class HelpTest {

    private static final Pattern EXAMPLE =
            Pattern.compile("^(?:.*: | *)offtape ((?:.+\\\\\\R)*.+)", Pattern.MULTILINE);

    private static CommandLine line(String... words) {
        return Commands.line(
                Terminal.of(System.out, System.err, false),
                Commands.systemLayers(),
                SettingsFile.ofUser(),
                words);
    }

    static Set<String> commands() {
        return new TreeSet<>(line().getSubcommands().keySet());
    }

    @Test
    void thereAreCommands() {
        assertTrue(
                commands().containsAll(Set.of("demo", "prepare", "measure", "speed", "simulate")),
                commands().toString());
    }

    @ParameterizedTest
    @MethodSource("commands")
    void helpGoesToStandardOutputWithinEightyColumns(String command) {
        for (String option : List.of("--help", "-h")) {
            Tool.Outcome help = Tool.run(command, option);
            assertEquals(0, help.code());
            assertEquals("", help.err());
            assertTrue(help.out().startsWith("Usage: offtape " + command + " "), help.out());
            assertFalse(help.out().contains("\u001b"), "control characters");
            assertEquals(List.of(), help.out().lines().filter(l -> l.length() > 80).toList());
        }
    }

    @ParameterizedTest
    @MethodSource("commands")
    void everyExampleCanBeTyped(String command) {
        List<List<String>> examples = examples(command);
        assertFalse(examples.isEmpty(), command + " shows no example");
        assertEquals(command, examples.get(0).get(0));
        for (List<String> words : examples) {
            line().parseArgs(words.toArray(String[]::new));
        }
    }

    /** What is broken at the edge of a terminal can be neither copied nor read. */
    @ParameterizedTest
    @MethodSource("commands")
    void whatStandsBelowTheOptionsFitsAsItIsWritten(String command) {
        String[] footer =
                line().getSubcommands().get(command).getCommandSpec().usageMessage().footer();
        assertEquals(List.of(), Stream.of(footer).filter(l -> l.length() > 80).toList());
    }

    @Test
    void examplesAreFoundWhereverTheyStand() {
        assertEquals(
                List.of("--channels", "3,4"),
                examples("measure").stream()
                        .filter(w -> w.contains("eight.flac"))
                        .map(w -> w.subList(2, 4))
                        .findFirst()
                        .orElseThrow());
        assertEquals(7, examples("measure").size());
        assertEquals(3, examples("tones").size());
    }

    /** The commands below the options: behind words and a colon, or indented below their words. */
    private static List<List<String>> examples(String command) {
        String help = Tool.run(command, "--help").out();
        List<List<String>> examples = new ArrayList<>();
        Matcher m = EXAMPLE.matcher(help.substring(Math.max(0, help.indexOf("\nExample"))));
        while (m.find()) {
            examples.add(words(m.group(1).replaceAll("\\\\\\R", " ")));
        }
        return examples;
    }

    private static List<String> words(String line) {
        List<String> words = new ArrayList<>();
        Matcher m = Pattern.compile("\"([^\"]*)\"|(\\S+)").matcher(line);
        while (m.find()) {
            words.add(m.group(1) == null ? m.group(2) : m.group(1));
        }
        return words;
    }

    @ParameterizedTest
    @MethodSource("commands")
    void everyCommandTakesTheCommonOptions(String command) {
        Set<String> names =
                line().getSubcommands().get(command).getCommandSpec().optionsMap().keySet();
        assertTrue(names.containsAll(Set.of("--help", "--version", "--quiet", "--verbose")));
    }

    @Test
    void everyCommandTellsTheVersion() {
        String version = Tool.run("--version").out();
        assertTrue(version.startsWith("Offtape "), version);
        for (String command : commands()) {
            Tool.Outcome outcome = Tool.run(command, "--version");
            assertEquals(0, outcome.code());
            assertEquals(version, outcome.out());
        }
    }

    @Test
    void theTopHelpNamesAllCommands() {
        String help = Tool.run("--help").out();
        for (String command : commands()) {
            assertTrue(
                    Pattern.compile("^  " + command + " ", Pattern.MULTILINE).matcher(help).find());
        }
    }

    @Test
    void everyOptionIsDescribed() {
        Stream<String> bare =
                line().getSubcommands().values().stream()
                        .flatMap(c -> c.getCommandSpec().options().stream())
                        .filter(o -> o.description().length == 0 || o.description()[0].isBlank())
                        .map(o -> o.longestName());
        assertEquals(List.of(), bare.toList());
    }

    @ParameterizedTest
    @ValueSource(strings = {"--help", "-h", "--version", "-V"})
    void noOptionsOfCommandsAreReadForAnswersWithoutThem(String word) {
        Stream<CommandLine> commands = line(word).getSubcommands().values().stream();
        assertEquals(List.of(), commands.flatMap(c -> c.getCommandSpec().args().stream()).toList());
    }

    @Test
    void outlinesGiveTheSameHelp() {
        assertEquals(line().getUsageMessage(), line("--help").getUsageMessage());
    }

    @ParameterizedTest
    @MethodSource("commands")
    void aCommandIsReadAloneAndHelpsTheSame(String command) {
        CommandLine alone = line(command, "--help");
        assertEquals(Set.of(command), alone.getSubcommands().keySet());
        assertEquals(
                line().getSubcommands().get(command).getUsageMessage(),
                alone.getSubcommands().get(command).getUsageMessage());
    }
}
