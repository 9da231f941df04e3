package offtape.cli.terminal;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import offtape.core.text.InertText;
import org.jline.terminal.Attributes;
import org.jline.terminal.Terminal;
import org.jline.terminal.TerminalBuilder;
import org.jline.utils.Curses;
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

    // not the library's own writer: when the process ends, the library closes that at some moment
    private final PrintStream out;
    private final String leave;

    private LiveScreen(Terminal terminal, PrintStream out) {
        this.terminal = terminal;
        this.out = out;
        this.reader = terminal.reader();
        this.before = terminal.enterRawMode();
        Attributes raw = terminal.getAttributes();
        // Ctrl-C ends the process as it does elsewhere
        raw.setLocalFlag(Attributes.LocalFlag.ISIG, true);
        // a process that is put to sleep would leave the terminal as it is now
        raw.setControlChar(Attributes.ControlChar.VSUSP, 0);
        terminal.setAttributes(raw);
        this.leave = control(Capability.cursor_normal) + control(Capability.exit_ca_mode);
        out.print(control(Capability.enter_ca_mode) + control(Capability.cursor_invisible));
        out.flush();
    }

    /**
     * On the terminal of this process, by way of its standard error; empty if it is not known how
     * to move about on it.
     */
    static Optional<LiveScreen> ofSystem() {
        PrintStream err =
                new PrintStream(
                        new FileOutputStream(FileDescriptor.err), false, StandardCharsets.UTF_8);
        try {
            Terminal terminal =
                    TerminalBuilder.builder()
                            .system(true)
                            .systemOutput(TerminalBuilder.SystemOutput.ForcedSysErr)
                            .encoding(StandardCharsets.UTF_8)
                            // signals end the process as they do elsewhere
                            .nativeSignals(false)
                            .graphemeCluster(false)
                            .dumb(false)
                            .build();
            if (terminal.getStringCapability(Capability.cursor_home) == null) {
                terminal.close();
                return Optional.empty();
            }
            return Optional.of(over(terminal, err));
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    /**
     * On a given terminal, which is closed with it.
     *
     * @param out where the terminal takes what is drawn
     */
    static LiveScreen over(Terminal terminal, PrintStream out) {
        return new LiveScreen(terminal, out);
    }

    private String control(Capability capability) {
        String text = terminal.getStringCapability(capability);
        return text == null ? "" : Curses.tputs(text);
    }

    /** Columns. */
    public int width() {
        return terminal.getColumns() > 0 ? terminal.getColumns() : USUAL_WIDTH;
    }

    /** Draws lines from the top; what does not fit is left out, empty lines first. */
    public void show(List<String> lines) {
        StringBuilder picture = new StringBuilder(control(Capability.cursor_home));
        List<String> shown = fitted(lines, terminal.getRows());
        for (int i = 0; i < shown.size(); i++) {
            String line = InertText.line(shown.get(i));
            picture.append(line, 0, Math.min(line.length(), width()));
            picture.append(control(Capability.clr_eol));
            picture.append(i + 1 < shown.size() ? "\r\n" : "");
        }
        out.print(picture.append(control(Capability.clr_eos)));
        out.flush();
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
        } catch (IOException e) {
            // the terminal is gone or being left: there are no more keys
            return OptionalInt.empty();
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
        out.print(leave);
        out.flush();
        try {
            terminal.setAttributes(before);
            terminal.close();
        } catch (IOException | IllegalStateException e) {
            // the library has left it already, as it does by itself when the process ends
            return;
        }
    }
}
