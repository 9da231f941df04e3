package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import offtape.cli.settings.SettingsFile;
import offtape.cli.terminal.Terminal;
import offtape.core.text.Language;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

/** The help in German says all that the English one says, and both may be typed alike. */
class GermanHelpTest {

    /** What stands for something else, is typed or is the name of a file. */
    private static final Pattern KEPT =
            Pattern.compile("\\$\\{[^}]*\\}|--[a-z][-a-z]*|[\\w-]+\\.(?:json|html|wav|csv|txt)\\b");

    private static final Pattern ENGLISH =
            Pattern.compile("\\b(?:the|of|and|is|with|from|no|not|than|which)\\b");

    /** A command, alone on its line or behind words and a colon, with the lines it goes on to. */
    private static final Pattern TYPED =
            Pattern.compile("^(?:.*: | *)(offtape (?:.+\\\\\\n)*.+)", Pattern.MULTILINE);

    private static final Map<String, CommandSpec> IN_ENGLISH = all(Language.ENGLISH);
    private static final Map<String, CommandSpec> IN_GERMAN = all(Language.GERMAN);

    private static CommandLine line(String... words) {
        return Commands.line(
                Terminal.of(System.out, System.err, false),
                Commands.systemLayers(),
                SettingsFile.ofUser(),
                words);
    }

    private static Map<String, CommandSpec> all(Language language) {
        CommandLine line = line(HelpLanguage.OPTION, language.code());
        Map<String, CommandSpec> all = new TreeMap<>();
        all.put("", line.getCommandSpec());
        line.getSubcommands().forEach((name, l) -> all.put(name, l.getCommandSpec()));
        // texts as they are written, with what stands for something else
        all.values().forEach(command -> command.interpolateVariables(false));
        return all;
    }

    static Set<String> commands() {
        Set<String> names = new TreeSet<>(IN_ENGLISH.keySet());
        names.remove("");
        return names;
    }

    static Set<String> commandsAndTheWhole() {
        return IN_ENGLISH.keySet();
    }

    /** What the help of a command tells, each text under what it is told of. */
    private static Map<String, String> texts(CommandSpec command) {
        Map<String, String> texts = new TreeMap<>();
        texts.put("description", String.join("\n", command.usageMessage().description()));
        texts.put("footer", footer(command));
        for (OptionSpec option : command.options()) {
            if (!option.hidden()) {
                texts.put(option.longestName(), String.join("\n", option.description()));
            }
        }
        command.positionalParameters()
                .forEach(
                        p ->
                                texts.put(
                                        p.paramLabel() + p.index(),
                                        String.join("\n", p.description())));
        return texts;
    }

    private static String footer(CommandSpec command) {
        return String.join("\n", command.usageMessage().footer());
    }

    private static List<String> found(Pattern pattern, int group, String text) {
        return pattern.matcher(text).results().map(m -> m.group(group)).toList();
    }

    private static Set<String> kept(String text) {
        return new TreeSet<>(KEPT.matcher(text).results().map(MatchResult::group).toList());
    }

    @ParameterizedTest
    @MethodSource("commandsAndTheWhole")
    void everyTextIsSaidInBothLanguages(String command) {
        Map<String, String> english = texts(IN_ENGLISH.get(command));
        Map<String, String> german = texts(IN_GERMAN.get(command));
        assertEquals(english.keySet(), german.keySet());
        english.forEach(
                (of, text) -> {
                    String other = german.get(of);
                    assertFalse(other.isBlank(), of);
                    assertNotEquals(text, other, of);
                    assertEquals(kept(text), kept(other), of);
                    if (!of.equals("footer")) {
                        assertEquals(List.of(), found(ENGLISH, 0, other), of + ": " + other);
                    }
                });
    }

    /**
     * An option that shares a German text with another must mean the same, as the English tells.
     */
    @Test
    void textsThatAreOneInGermanAreOneInEnglish() {
        Map<String, Set<String>> english = new TreeMap<>();
        for (String command : IN_ENGLISH.keySet()) {
            Map<String, String> german = texts(IN_GERMAN.get(command));
            texts(IN_ENGLISH.get(command))
                    .forEach(
                            (of, text) ->
                                    english.computeIfAbsent(german.get(of), g -> new TreeSet<>())
                                            .add(
                                                    text.replaceFirst("^Show this help .*", "help")
                                                            .replaceFirst(
                                                                    "^Print (the )?version .*",
                                                                    "v")));
        }
        assertEquals(List.of(), english.values().stream().filter(said -> said.size() > 1).toList());
    }

    @ParameterizedTest
    @MethodSource("commandsAndTheWhole")
    void whatIsTypedIsTheSameInBoth(String command) {
        List<String> english = found(TYPED, 1, footer(IN_ENGLISH.get(command)));
        assertFalse(english.isEmpty());
        assertEquals(english, found(TYPED, 1, footer(IN_GERMAN.get(command))));
    }

    @ParameterizedTest
    @MethodSource("commandsAndTheWhole")
    void whatStandsBelowTheOptionsFitsAsItIsWritten(String command) {
        assertEquals(
                List.of(),
                footer(IN_GERMAN.get(command)).lines().filter(l -> l.length() > 80).toList());
    }

    @ParameterizedTest
    @MethodSource("commands")
    void theHelpOfACommandIsGermanThroughout(String command) {
        Tool.Outcome help = Tool.run(command, "--help", "--language", "de");
        assertEquals(0, help.code());
        assertEquals("", help.err());
        assertTrue(help.out().startsWith("Aufruf: offtape " + command + " "), help.out());
        assertEquals(List.of(), help.out().lines().filter(l -> l.length() > 80).toList());
    }

    @Test
    void theLanguageMayStandBeforeTheCommand() {
        assertEquals(
                Tool.run("faults", "-h", HelpLanguage.OPTION, "de"),
                Tool.run(HelpLanguage.OPTION + "=de", "faults", "-h"));
    }

    @ParameterizedTest
    @CsvSource({"--help,--language,de", "--language,de,-h"})
    void theHelpOfTheWholeIsGermanThroughout(String first, String second, String third) {
        Tool.Outcome help = Tool.run(first, second, third);
        assertEquals(0, help.code());
        assertTrue(help.out().startsWith("Aufruf: offtape "), help.out());
        assertTrue(help.out().contains("\nBefehle:\n"), help.out());
        assertEquals(List.of(), found(ENGLISH, 0, help.out()));
    }

    /** 48000 and -18 are the defaults that the English help tells of, as numbers are typed. */
    @Test
    void defaultsAndChoicesStandInTheText() {
        String help = Tool.run("prepare", "--help", "--language", "de").out();
        assertTrue(help.contains("(ohne Angabe: 48000)"), help);
        assertTrue(Pattern.compile("\\(ohne\\s+Angabe:\\s+-18\\.0\\)").matcher(help).find(), help);
        assertTrue(help.contains(": en, de."), help);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "measure --help",
                "measure --help --language en",
                "measure --help --language=EN",
                "measure --help --language",
                "measure -- --language de",
                "measure languages"
            })
    void whoAsksForNoOtherLanguageGetsEnglish(String words) {
        assertEquals(Language.ENGLISH, HelpLanguage.of(words.split(" ")));
    }

    @Test
    void theLastLanguageNamedCounts() {
        assertEquals(
                Language.GERMAN,
                HelpLanguage.of("--language", "en", "measure", "--language", "DE"));
    }

    @Test
    void aLanguageThatThereIsNotIsRefused() {
        Tool.Outcome outcome = Tool.run(HelpLanguage.OPTION, "xx", "devices");
        assertEquals(2, outcome.code());
        assertTrue(outcome.err().contains("\"xx\""), outcome.err());
    }

    @Test
    void noTextIsLeftThatNobodyIsTold() {
        List<String> told = new ArrayList<>();
        IN_GERMAN.values().stream()
                .flatMap(c -> texts(c).values().stream())
                .flatMap(text -> Stream.of(text.split("\n")))
                .forEach(told::add);
        var bundle = IN_GERMAN.get("").resourceBundle();
        List<String> silent =
                bundle.keySet().stream()
                        .filter(key -> !key.endsWith("Heading"))
                        .filter(key -> !bundle.getString(key).isEmpty())
                        .filter(key -> !told.contains(bundle.getString(key)))
                        .toList();
        assertEquals(List.of(), silent);
    }
}
