package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import offtape.cli.settings.SettingsFile;
import offtape.cli.terminal.Terminal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every command that the documentation shows can be typed as it stands there. */
class DocumentedCommandsTest {

    private static final Path ROOT = Path.of("..");

    /** A line in a block of code, with the lines it goes on in. */
    private static final Pattern COMMAND =
            Pattern.compile("^ *\\./offtape ((?:.*\\\\\\R)*.*)$", Pattern.MULTILINE);

    private static final Pattern BLOCK =
            Pattern.compile("^ *```\\w*\\R(.*?)^ *```", Pattern.MULTILINE | Pattern.DOTALL);

    private record Shown(String where, String line) {
        @Override
        public String toString() {
            return where + ": " + line;
        }
    }

    static List<Shown> shown() throws IOException {
        List<Path> pages = new ArrayList<>(List.of(ROOT.resolve("README.md")));
        try (Stream<Path> guides = Files.list(ROOT.resolve("lab-cli/src/doc/guides"))) {
            guides.sorted().forEach(pages::add);
        }
        List<Shown> shown = new ArrayList<>();
        for (Path page : pages) {
            Matcher block = BLOCK.matcher(Files.readString(page));
            while (block.find()) {
                Matcher command = COMMAND.matcher(block.group(1));
                while (command.find()) {
                    String line = command.group(1).replaceAll("\\\\\\R", " ");
                    shown.add(new Shown(page.getFileName().toString(), line));
                }
            }
        }
        return shown;
    }

    @Test
    void theyAreFound() throws IOException {
        List<Shown> shown = shown();
        assertTrue(shown.size() > 50, shown.size() + " commands");
        assertTrue(shown.stream().map(Shown::where).distinct().count() > 3);
    }

    @ParameterizedTest
    @MethodSource("shown")
    void canBeTyped(Shown shown) {
        String[] words = words(shown.line()).toArray(String[]::new);
        assertDoesNotThrow(
                () ->
                        Commands.line(
                                        Terminal.of(System.out, System.err, false),
                                        Commands.systemLayers(),
                                        SettingsFile.ofUser(),
                                        words)
                                .parseArgs(words));
    }

    private static List<String> words(String line) {
        List<String> words = new ArrayList<>();
        Matcher word = Pattern.compile("\"([^\"]*)\"|(#.*)|(\\S+)").matcher(line);
        while (word.find()) {
            if (word.group(1) != null) {
                words.add(word.group(1));
            } else if (word.group(3) != null) {
                words.add(word.group(3));
                if (word.group(3).endsWith("*")) {
                    // a shell puts all that fits in its place
                    words.add(word.group(3));
                }
            }
        }
        return words;
    }
}
