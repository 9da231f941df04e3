package offtape.report.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Element;

final class ChartScriptTest {

    private static final int MOST_BYTES = 8_192;

    /** What would ask for something, run a text, or make markup of one. */
    static Stream<String> dangers() {
        return Stream.of(
                "http",
                "fetch",
                "XMLHttp",
                "WebSocket",
                "sendBeacon",
                "import",
                "eval",
                "Function(",
                "innerHTML",
                "outerHTML",
                "insertAdjacent",
                "document.write",
                "localStorage",
                "cookie");
    }

    @ParameterizedTest
    @MethodSource("dangers")
    void theScriptCanDoNoHarm(String danger) {
        assertFalse(ChartScript.text().contains(danger));
    }

    /** Nothing in it ends its element or the part that is hidden from XML. */
    @Test
    void theScriptStandsInAnyPage() {
        String text = ChartScript.text();
        assertFalse(text.contains("</"));
        assertFalse(text.contains("]]>"));
        assertTrue(text.length() < MOST_BYTES, "characters " + text.length());
    }

    /** Texts in quotes are names of events, classes and the like: one word, or a list of them. */
    @Test
    void theScriptHasNoWordsOfItsOwn() {
        assertFalse(Pattern.compile("['`][A-Z][a-z]+ [a-z]+").matcher(ChartScript.text()).find());
        assertFalse(ChartScript.text().contains("/*"), "a comment is left");
    }

    @Test
    void theWordsStandInThePage() throws Exception {
        Element script =
                Svg.parse(
                                ChartScript.element(Reader.ENGLISH, ChartScript.text())
                                        .toString()
                                        .strip())
                        .getDocumentElement();
        assertEquals("Show", script.getAttribute("data-show"));
        assertEquals("Both", script.getAttribute("data-both"));
        assertEquals(".", script.getAttribute("data-decimal"));
        assertTrue(script.getAttribute("data-keys").contains("Escape"));
    }
}
