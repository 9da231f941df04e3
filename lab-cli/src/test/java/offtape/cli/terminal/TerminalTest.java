package offtape.cli.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Progress that redraws itself on a terminal, plain lines elsewhere, and when which is meant. */
class TerminalTest {

    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    private Terminal terminal(boolean interactive) {
        return Terminal.of(stream(out), stream(err), interactive);
    }

    private static PrintStream stream(ByteArrayOutputStream into) {
        return new PrintStream(into, true, StandardCharsets.UTF_8);
    }

    private static String text(ByteArrayOutputStream from) {
        return from.toString(StandardCharsets.UTF_8);
    }

    @Test
    void progressIsTakenAwayBeforeAnythingElseIsPrinted() {
        Terminal terminal = terminal(true);
        terminal.progress(1, 2, "Measuring");
        terminal.error("That was nothing.");
        assertEquals("\r\u001b[K[1/2] Measuring\r\u001b[Kofftape: That was nothing.\n", text(err));
    }

    @Test
    void elsewhereProgressIsPlainLines() {
        Terminal terminal = terminal(false);
        terminal.progress(1, 2, "Measuring");
        terminal.result("0.1 %");
        assertEquals("[1/2] Measuring\n", text(err));
        assertEquals("0.1 %\n", text(out));
    }

    @Test
    void quietLeavesResultsAndErrors() {
        Terminal terminal = terminal(true);
        terminal.setQuiet(true);
        terminal.progress(1, 2, "Measuring");
        terminal.message("Done.");
        terminal.raw("{}");
        terminal.error("No.");
        assertEquals("{}", text(out));
        assertEquals("offtape: No.\n", text(err));
    }

    /** The convention: NO_COLOR counts when it is set and not empty (no-color.org, from memory). */
    @Test
    void theEnvironmentMayForbidControlCharacters() {
        assertTrue(Interactive.allowed(Map.of("TERM", "xterm")));
        assertTrue(Interactive.allowed(Map.of("NO_COLOR", "")));
        assertFalse(Interactive.allowed(Map.of("NO_COLOR", "1")));
        assertFalse(Interactive.allowed(Map.of("TERM", "dumb")));
    }

    @ParameterizedTest
    @CsvSource({
        "/dev/pts/3, true",
        "/dev/tty1, true",
        "/dev/console, true",
        "/dev/null, false",
        "/home/me/log.txt, false",
        "pipe:[1234], false"
    })
    void aFileOrPipeIsNoTerminal(String device, boolean terminal) {
        assertEquals(terminal, Interactive.isTerminal(device));
    }

    @ParameterizedTest
    @CsvSource(
            nullValues = "none",
            value = {
                "2, loopback",
                "' OFF-TAPE ', off-tape",
                "3, none",
                "'', none",
                "off, none",
            })
    void aQuestionIsAnsweredByNumberOrName(String typed, String chosen) {
        Terminal terminal =
                Terminal.of(
                        stream(out),
                        stream(err),
                        new BufferedReader(new StringReader(typed + "\n")));
        Optional<String> answer = terminal.choice("Which?", List.of("off-tape", "loopback"));
        assertEquals(Optional.ofNullable(chosen), answer);
        assertEquals("", text(out));
        assertTrue(text(err).startsWith("Which?\n  1  off-tape\n  2  loopback\n"));
    }

    @Test
    void nobodyIsAskedWhereNobodyIs() {
        assertEquals(Optional.empty(), terminal(true).choice("Which?", List.of("a", "b")));
        assertEquals("", text(err));
        Terminal ended =
                Terminal.of(stream(out), stream(err), new BufferedReader(new StringReader("")));
        assertEquals(Optional.empty(), ended.choice("Which?", List.of("a", "b")));
    }

    private static final String HOSTILE = "a\u001b[2J\u009b1m\u202e\rb\nc\td";
    private static final String INERT = "a\uFFFD[2J\uFFFD1m\uFFFD\uFFFDb\uFFFDc\uFFFDd";

    @Test
    void noTextSteersTheTerminalOrPassesForAnotherLine() {
        Terminal terminal = terminal(false);
        terminal.setVerbose(true);
        terminal.result(HOSTILE);
        terminal.message(HOSTILE);
        terminal.detail(HOSTILE);
        terminal.error(HOSTILE);
        terminal.progress(1, 2, HOSTILE);
        terminal.status(HOSTILE);
        assertEquals(INERT + "\n", text(out));
        assertEquals(
                INERT
                        + "\n"
                        + INERT
                        + "\nofftape: "
                        + INERT
                        + "\n[1/2] "
                        + INERT
                        + "\n"
                        + INERT
                        + "\n",
                text(err));
    }

    @Test
    void onATerminalOnlyTheProgramItselfSteers() {
        terminal(true).status(HOSTILE);
        assertEquals("\r\u001b[K" + INERT, text(err));
    }

    @Test
    void textsOfSeveralLinesKeepThem() {
        terminal(false).raw("{\n\t\"a\": \u001b\r}\n");
        assertEquals("{\n\t\"a\": \uFFFD\uFFFD}\n", text(out));
    }

    @Test
    void questionsAreInert() {
        Terminal terminal =
                Terminal.of(
                        stream(out),
                        stream(err),
                        new BufferedReader(new StringReader("\n".repeat(3))));
        terminal.choice(HOSTILE, List.of(HOSTILE));
        terminal.ready(HOSTILE);
        terminal.answer(HOSTILE, HOSTILE);
        assertEquals(
                INERT
                        + "\n  1  "
                        + INERT
                        + "\nNumber or name (empty: not known): "
                        + INERT
                        + "\nPress Enter when ready. "
                        + INERT
                        + " ["
                        + INERT
                        + "]: ",
                text(err));
    }

    @Test
    void tracesTellEachFaultOnceAndAreInert() {
        Exception fault = new IllegalStateException(HOSTILE, new IOException("below"));
        fault.getCause().initCause(fault);
        fault.addSuppressed(new IOException("beside"));
        terminal(false).trace(fault);
        List<String> heads = text(err).lines().filter(line -> !line.startsWith("    at ")).toList();
        assertEquals(
                List.of(
                        "java.lang.IllegalStateException: " + INERT,
                        "Beside it: java.io.IOException: beside",
                        "Caused by: java.io.IOException: below"),
                heads);
        assertTrue(text(err).contains("\n    at " + TerminalTest.class.getName()), text(err));
    }
}
