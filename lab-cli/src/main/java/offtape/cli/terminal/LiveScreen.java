package offtape.cli.terminal;

import java.io.IOException;
import java.io.InterruptedIOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.jline.terminal.Attributes;
import org.jline.terminal.Terminal;
import org.jline.terminal.TerminalBuilder;
import org.jline.utils.InfoCmp.Capability;
import org.jline.utils.NonBlockingReader;

/**
 * A picture of lines that is drawn over and over on the user's terminal, and keys read one by one.
 * The terminal is as it was once this is closed; what stood on it before comes back.
 */
public final class LiveScreen implements AutoCloseable {

    private static final int ESCAPE = 27;
    private static final int USUAL_WIDTH = 80;
    private static final long ESCAPE_MS = 30;

    private final Terminal terminal;
    private final NonBlockingReader reader;
    private final Attributes before;

    private LiveScreen(Terminal terminal) {
        this.terminal = terminal;
        this.reader = terminal.reader();
        this.before = terminal.enterRawMode();
        Attributes raw = terminal.getAttributes();
        // a process that is put to sleep would leave the terminal as it is now
        raw.setControlChar(Attributes.ControlChar.VSUSP, 0);
        terminal.setAttributes(raw);
        terminal.puts(Capability.enter_ca_mode);
        terminal.puts(Capability.cursor_invisible);
        terminal.flush();
    }

    /** On the terminal of this process, by way of its standard error. */
    static LiveScreen ofSystem() {
        try {
            return over(
                    TerminalBuilder.builder()
                            .system(true)
                            .systemOutput(TerminalBuilder.SystemOutput.ForcedSysErr)
                            .encoding(StandardCharsets.UTF_8)
                            // Ctrl-C ends the process as it does elsewhere
                            .nativeSignals(false)
                            .graphemeCluster(false)
                            .dumb(false)
                            .build());
        } catch (IOException e) {
            throw new UncheckedIOException("the terminal cannot be used", e);
        }
    }

    /** On a given terminal, which is closed with it. */
    static LiveScreen over(Terminal terminal) {
        return new LiveScreen(terminal);
    }

    /** Columns. */
    public int width() {
        return terminal.getColumns() > 0 ? terminal.getColumns() : USUAL_WIDTH;
    }

    /** Draws lines from the top; what does not fit is left out, empty lines first. */
    public void show(List<String> lines) {
        terminal.puts(Capability.cursor_home);
        List<String> shown = fitted(lines, terminal.getRows());
        for (int i = 0; i < shown.size(); i++) {
            String line = shown.get(i);
            terminal.writer().print(line.substring(0, Math.min(line.length(), width())));
            terminal.puts(Capability.clr_eol);
            if (i + 1 < shown.size()) {
                terminal.writer().print("\r\n");
            }
        }
        terminal.puts(Capability.clr_eos);
        terminal.flush();
    }

    private static List<String> fitted(List<String> lines, int height) {
        List<String> shown = new ArrayList<>(lines);
        for (int i = shown.size() - 1; i >= 0 && height > 0 && shown.size() > height; i--) {
            if (shown.get(i).isEmpty()) {
                shown.remove(i);
            }
        }
        return height > 0 && shown.size() > height ? shown.subList(0, height) : shown;
    }

    /** A key that was pressed, if one was; the arrows up and down are plus and minus. */
    public OptionalInt key() {
        try {
            int c = reader.read(1);
            if (c == ESCAPE) {
                return escaped();
            }
            return c < 0 ? OptionalInt.empty() : OptionalInt.of(c);
        } catch (InterruptedIOException e) {
            return OptionalInt.empty();
        } catch (IOException e) {
            throw new UncheckedIOException("the keyboard cannot be read", e);
        }
    }

    private OptionalInt escaped() throws IOException {
        int next = reader.read(ESCAPE_MS);
        if (next != '[' && next != 'O') {
            return OptionalInt.empty();
        }
        int last = reader.read(ESCAPE_MS);
        while (last >= '0' && last <= '?') {
            last = reader.read(ESCAPE_MS);
        }
        return switch (last) {
            case 'A' -> OptionalInt.of('+');
            case 'B' -> OptionalInt.of('-');
            default -> OptionalInt.empty();
        };
    }

    @Override
    public void close() {
        terminal.puts(Capability.cursor_normal);
        terminal.puts(Capability.exit_ca_mode);
        terminal.flush();
        terminal.setAttributes(before);
        try {
            terminal.close();
        } catch (IOException e) {
            throw new UncheckedIOException("the terminal cannot be left", e);
        }
    }
}
