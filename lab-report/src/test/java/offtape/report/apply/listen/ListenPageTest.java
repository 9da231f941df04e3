package offtape.report.apply.listen;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page as a file. How it works is checked in a browser. */
class ListenPageTest {

    private static final String NASTY = "</script><img src=x onerror=alert(1)>&.wav";

    @TempDir private Path folder;

    private final Listening listening =
            Listening.of(
                    Sounds.stereo(NASTY, Sounds.music(0.5)),
                    Sounds.stereo("b.wav", Sounds.moved(Sounds.music(0.5), 0, 0.8)),
                    Sounds.choice(false, false),
                    Sounds.NONE);

    private String page(String name) throws IOException {
        ListenPage.write(listening, folder.resolve(name));
        return Files.readString(folder.resolve(name));
    }

    @Test
    void onlyItsOwnScriptAndStyleAreAllowed() throws IOException {
        String page = page("p.html");
        String script = between(page, "<script>", "</script>");
        String style = between(page, "<style>", "</style>");
        assertTrue(page.contains("script-src " + PageId.policySource(script) + ";"));
        assertTrue(page.contains("style-src " + PageId.policySource(style) + ";"));
        assertTrue(page.contains("default-src 'none'"));
        assertFalse(Pattern.compile(" style=|javascript:| on[a-z]+=\"").matcher(page).find());
    }

    @Test
    void namesAreInert() throws IOException {
        String page = page("p.html");
        assertFalse(page.contains("<img"));
        assertTrue(page.contains("\\u003c/script\\u003e\\u003cimg src=x"));
        assertEquals(4, page.split("</script>", -1).length - 1);
    }

    @Test
    void bothSoundsLieInItWholeAndTheSameInputGivesTheSameBytes() throws IOException {
        String page = page("p.html");
        assertArrayEquals(listening.a().bytes(), sound(page, "sound-A"));
        assertArrayEquals(listening.b().bytes(), sound(page, "sound-B"));
        assertEquals(page, page("again.html"));
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
