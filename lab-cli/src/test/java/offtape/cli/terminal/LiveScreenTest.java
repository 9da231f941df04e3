package offtape.cli.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.jline.terminal.Attributes;
import org.jline.terminal.Size;
import org.jline.terminal.Terminal;
import org.jline.terminal.impl.LineDisciplineTerminal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Drawing on a terminal that only exists in memory, and its keys. */
@Timeout(20)
class LiveScreenTest {

    private final ByteArrayOutputStream drawn = new ByteArrayOutputStream();

    private static Terminal terminal(String typed, int columns, int rows) throws IOException {
        LineDisciplineTerminal terminal =
                new LineDisciplineTerminal(
                        "memory", "xterm", new ByteArrayOutputStream(), StandardCharsets.UTF_8);
        terminal.setSize(Size.of(columns, rows));
        terminal.processInputBytes(typed.getBytes(StandardCharsets.UTF_8));
        return terminal;
    }

    private LiveScreen screen(Terminal terminal) {
        return LiveScreen.over(terminal, new PrintStream(drawn, false, StandardCharsets.UTF_8));
    }

    private String text() {
        return drawn.toString(StandardCharsets.UTF_8);
    }

    /** The escape sequences are those of xterm's own description (ctlseqs). */
    @Test
    void theScreenIsLeftAsItWas() throws IOException {
        Terminal terminal = terminal("", 80, 24);
        LiveScreen screen = screen(terminal);
        assertTrue(text().contains("\u001b[?1049h"));
        assertTrue(text().contains("\u001b[?25l"));
        assertTrue(terminal.getAttributes().getLocalFlag(Attributes.LocalFlag.ISIG));
        assertFalse(terminal.getAttributes().getLocalFlag(Attributes.LocalFlag.ICANON));
        assertFalse(text().contains("\u001b[?1049l"));
        screen.close();
        assertTrue(text().contains("\u001b[?1049l"));
        assertTrue(text().contains("\u001b[?25h"));
    }

    @Test
    void linesAreDrawnFromTheTopAndCutAtTheEdges() throws IOException {
        try (LiveScreen screen = screen(terminal("", 10, 3))) {
            drawn.reset();
            screen.show(List.of("one", "", "0123456789abc", "", "two", "three"));
        }
        String plain = text().replaceAll("\u001b\\[[0-9;?]*[A-Za-z]", "");
        assertTrue(plain.startsWith("one\r\n0123456789\r\ntwo"), plain);
        assertFalse(plain.contains("three"));
        assertTrue(text().startsWith("\u001b[H"));
    }

    @Test
    void noNameSteersTheScreen() throws IOException {
        try (LiveScreen screen = screen(terminal("", 80, 3))) {
            drawn.reset();
            screen.show(List.of("a\u001b[2Jb\u009b\u202e\nc"));
            assertTrue(text().contains("a\uFFFD[2Jb\uFFFD\uFFFD\uFFFDc"), text());
        }
    }

    @Test
    void keysComeOneByOneAndArrowsArePlusAndMinus() throws IOException {
        List<Integer> pressed = new ArrayList<>();
        try (LiveScreen screen = screen(terminal("a\u001b[A\u001bOB\u001b[1;5Cq", 80, 24))) {
            long end = System.nanoTime() + 5_000_000_000L;
            while (!pressed.contains((int) 'q') && System.nanoTime() < end) {
                OptionalInt key = screen.key();
                key.ifPresent(pressed::add);
            }
        }
        assertEquals(List.of((int) 'a', (int) '+', (int) '-', (int) 'q'), pressed);
    }
}
