package offtape.report.render;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

final class MarkupTest {

    @Test
    void textAndAttributesAreEscaped() {
        String out = new Markup().element("p", "a<b>&\"'", "title", "\"'<>&").toString();
        assertEquals("<p title=\"&quot;&#39;&lt;&gt;&amp;\">a&lt;b&gt;&amp;&quot;&#39;</p>", out);
    }

    /** XML 1.0 (fifth edition), production 2: no NUL, no escape, no lone surrogate. */
    @Test
    void charactersThatXmlForbidsAreReplaced() {
        String out = new Markup().text("a\u0000b\u001bc\ud800d\ufffee\ud83d\ude00\t\n").toString();
        assertEquals("a\ufffdb\ufffdc\ufffdd\ufffde\ud83d\ude00\t\n", out);
    }

    /**
     * Unicode Standard Annex 9 and ISO/IEC 6429: overrides of direction, and the second controls.
     */
    @Test
    void charactersThatSteerAreReplaced() {
        String out = new Markup().element("p", "a\u202eb\u2066c\u009bd", "id", "\u0085").toString();
        assertEquals("<p id=\"\ufffd\">a\ufffdb\ufffdc\ufffdd</p>", out);
    }
}
