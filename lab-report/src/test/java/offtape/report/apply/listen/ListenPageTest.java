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
import java.util.regex.Matcher;
import java.util.regex.Pattern;
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
