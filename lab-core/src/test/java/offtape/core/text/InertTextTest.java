package offtape.core.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Characters by their names in the Unicode Character Database. */
class InertTextTest {

    @ParameterizedTest
    @CsvSource({
        "0000, NULL",
        "0007, BELL",
        "0009, CHARACTER TABULATION",
        "000A, LINE FEED",
        "000D, CARRIAGE RETURN",
        "001B, ESCAPE",
        "007F, DELETE",
        "0085, NEXT LINE",
        "0090, DEVICE CONTROL STRING",
        "009B, CONTROL SEQUENCE INTRODUCER",
        "009D, OPERATING SYSTEM COMMAND",
        "061C, ARABIC LETTER MARK",
        "200B, ZERO WIDTH SPACE",
        "200E, LEFT-TO-RIGHT MARK",
        "200F, RIGHT-TO-LEFT MARK",
        "2028, LINE SEPARATOR",
        "2029, PARAGRAPH SEPARATOR",
        "202A, LEFT-TO-RIGHT EMBEDDING",
        "202E, RIGHT-TO-LEFT OVERRIDE",
        "2066, LEFT-TO-RIGHT ISOLATE",
        "2069, POP DIRECTIONAL ISOLATE",
        "FEFF, ZERO WIDTH NO-BREAK SPACE",
        "FFF9, INTERLINEAR ANNOTATION ANCHOR",
        "D800, HALF OF A PAIR",
    })
    void whatSteersIsReplaced(String hex, String name) {
        String text = "a" + (char) Integer.parseInt(hex, 16) + "b";
        assertEquals("a\uFFFDb", InertText.line(text), name);
    }

    @Test
    void everythingThatIsSeenStays() {
        String text =
                "Ж 磁带 آلة מכונה ñ é e\u0301 \u00A0 – … \uD83C\uDF99 \uD83D\uDC69\u200D\uD83D\uDD27"
                        + " \u0645\u06CC\u200C\u062E [31m \\u001b <b>";
        assertSame(text, InertText.line(text));
    }

    @Test
    void ownLinesStayWhereTheyAreWanted() {
        assertEquals("a\n\tb\uFFFD\uFFFD[2J", InertText.lines("a\n\tb\r\u001b[2J"));
        assertEquals("a\uFFFD\uFFFDb", InertText.line("a\n\tb"));
    }
}
