package offtape.report.apply.listen;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.Base64;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import offtape.core.text.Language;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page as a file. How it works is checked in a browser. */
class ListenPageTest {

    private static final String NASTY = "</script><img src=x onerror=alert(1)>&\u202e\u0085.wav";

    @TempDir private Path folder;

    private final Listening listening =
            Listening.of(
                    Sounds.stereo(NASTY, Sounds.music(0.5)),
                    Sounds.stereo("b.wav", Sounds.moved(Sounds.music(0.5), 0, 0.8)),
                    Sounds.choice(false, false),
                    Sounds.NONE);

    private String page(String name) throws IOException {
        ListenPage.write(listening, folder.resolve(name), Language.ENGLISH);
        return Files.readString(folder.resolve(name));
    }

    @Test
    void onlyItsOwnScriptAndStyleAreAllowed() throws Exception {
        String page = page("p.html");
        String script = between(page, "<script>", "</script>");
        String style = between(page, "<style>", "</style>");
        assertTrue(page.contains("script-src " + source(script) + ";"));
        assertTrue(page.contains("style-src " + source(style) + ";"));
        assertTrue(page.contains("default-src 'none'"));
        assertFalse(Pattern.compile(" style=|javascript:| on[a-z]+=\"").matcher(page).find());
    }

    @Test
    void namesAreInert() throws IOException {
        String page = page("p.html");
        assertFalse(page.contains("<img"));
        assertTrue(page.contains("\\u003c/script\\u003e\\u003cimg src=x"));
        assertTrue(page.contains("onerror=alert(1)\\u003e\\u0026\uFFFD\uFFFD.wav"));
        assertEquals(4, page.split("</script>", -1).length - 1);
    }

    @Test
    void bothSoundsLieInItWholeAndTheSameInputGivesTheSameBytes() throws IOException {
        String page = page("p.html");
        assertArrayEquals(listening.a().bytes(), sound(page, "sound-A"));
        assertArrayEquals(listening.b().bytes(), sound(page, "sound-B"));
        assertEquals(page, page("again.html"));
    }

    @Test
    void inGermanItSaysSoAndLeavesNothingInEnglish() throws Exception {
        Path file = folder.resolve("de.html");
        ListenPage.write(listening, file, Language.GERMAN);
        String page = Files.readString(file);
        assertTrue(page.contains("<html lang=\"de\">"));
        assertTrue(page.contains("script-src " + source(between(page, "<script>", "</script>"))));
        assertTrue(
                page.contains("<li>Beide werden genommen, wie sie sind"), page.substring(0, 9000));
        String frame = page.substring(page.indexOf("<title>"), page.indexOf("\"facts-json\""));
        String told = frame.replaceAll("(?s)<style>.*?</style>| (id|for)=\"[^\"]*\"", "");
        Matcher english =
                Pattern.compile("\\b(the|of|and|is|with|from|no|not|than|which)\\b").matcher(told);
        assertFalse(english.find(), told);
        assertFalse(told.contains("{{"), told);
        // what is kept is English in all languages
        assertTrue(between(page, "\"sentences\" : [", "]").contains("Both are taken"), page);
    }

    /** A text that no script says would be of no use, one that it lacks would say "undefined". */
    @Test
    void theScriptSaysEachOfItsTexts() throws IOException {
        String script = between(page("p.html"), "<script>", "</script>");
        int end = script.indexOf("};");
        Matcher name = Pattern.compile("\\n *\"([a-z-]+)\" : \"").matcher(script.substring(0, end));
        Set<String> names = new TreeSet<>();
        while (name.find()) {
            names.add(name.group(1));
        }
        String code = script.substring(end);
        assertEquals(Set.of(), missing(names, n -> code.contains("'" + n + "'")));
        Matcher said = Pattern.compile("said\\('([a-z-]+)'").matcher(code);
        Set<String> wanted = new TreeSet<>();
        while (said.find()) {
            wanted.add(said.group(1));
        }
        assertTrue(wanted.size() > 20, wanted.toString());
        assertEquals(Set.of(), missing(wanted, names::contains));
    }

    private static Set<String> missing(Set<String> names, Predicate<String> isThere) {
        return names.stream().filter(isThere.negate()).collect(Collectors.toSet());
    }

    /** What a browser computes of an element's text (CSP Level 3, section 6.7.2.4). */
    private static String source(String text) throws Exception {
        byte[] digest =
                MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
        return "'sha256-" + Base64.getEncoder().encodeToString(digest) + "'";
    }

    private static byte[] sound(String page, String id) {
        return Base64.getDecoder().decode(between(page, "id=\"" + id + "\">", "</script>"));
    }

    private static String between(String text, String before, String after) {
        Matcher m =
                Pattern.compile(
                                Pattern.quote(before) + "(.*?)" + Pattern.quote(after),
                                Pattern.DOTALL)
                        .matcher(text);
        assertTrue(m.find(), before);
        return m.group(1);
    }
}
