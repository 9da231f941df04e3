package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.function.Supplier;
import offtape.cli.terminal.Terminal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a user sees of a fault of ours: here standard output breaks down in an unheard-of way. */
class InternalFaultTest {

    @TempDir private Path folder;

    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    private int speed(Supplier<? extends Error> error, String... more) {
        PrintStream broken =
                new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8) {
                    @Override
                    public void println(String text) {
                        if (error != null) {
                            throw error.get();
                        }
                        throw new IllegalStateException("out of order");
                    }
                };
        Terminal terminal =
                Terminal.of(broken, new PrintStream(err, true, StandardCharsets.UTF_8), false);
        Path tone = new Lab(folder).wav("tone.wav", Lab.tone(1000, 0.1, 6));
        Object[] line = Lab.line(Lab.line("speed", tone), (Object[]) more);
        return Commands.run(
                terminal, Arrays.stream(line).map(Object::toString).toArray(String[]::new));
    }

    private String said() {
        return err.toString(StandardCharsets.UTF_8);
    }

    @Test
    void isASentenceAndNotATrace() {
        assertEquals(70, speed(null));
        assertEquals(
                "offtape: An internal fault ended the command (IllegalStateException). Run it again"
                        + " with --verbose and report what it prints.\n",
                said());
    }

    @Test
    void withVerboseHasItsTrace() {
        assertEquals(70, speed(null, "--verbose"));
        assertTrue(said().startsWith("java.lang.IllegalStateException: out of order\n    at "));
    }

    @Test
    void lackOfMemoryIsNamed() {
        assertEquals(70, speed(() -> new OutOfMemoryError("heap")));
        assertTrue(said().contains("the memory given to Java is used up"), said());
        assertFalse(said().contains("    at "), said());
    }
}
