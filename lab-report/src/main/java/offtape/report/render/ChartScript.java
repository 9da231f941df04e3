package offtape.report.render;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Collectors;

/**
 * The script that reads values off charts. It holds no word of any language: what it says stands in
 * the page.
 */
final class ChartScript {

    /** The parts of the script; each is about one thing. */
    private static final List<String> PARTS =
            List.of("values.js", "readout.js", "sides.js", "page.js");

    private ChartScript() {}

    /** All of it, as it stands between the tags: without its comments and indents. */
    static String text() {
        return PARTS.stream()
                .flatMap(name -> part(name).lines())
                .map(String::strip)
                .filter(line -> !line.isEmpty() && !isComment(line))
                .collect(Collectors.joining("\n", "\n(() => {\n'use strict';\n", "\n})();\n"));
    }

    private static boolean isComment(String line) {
        return line.startsWith("/*") || line.startsWith("*") || line.startsWith("//");
    }

    /** The element with the words that it says. */
    static Markup element(Wording words, String text) {
        return new Markup()
                .script(
                        text,
                        "data-keys",
                        words.say("page.reading-keys"),
                        "data-show",
                        words.say("page.reading-show"),
                        "data-both",
                        words.say("page.reading-both"),
                        "data-decimal",
                        words.number("0.0").substring(1, 2))
                .line();
    }

    private static String part(String name) {
        try (InputStream in = ChartScript.class.getResourceAsStream("charts/" + name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
