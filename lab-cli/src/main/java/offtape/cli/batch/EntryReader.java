package offtape.cli.batch;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import offtape.core.audio.ChannelChoice;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.Sentences;
import offtape.core.transport.CaptureMode;
import offtape.core.unit.TapeSpeed;

/** Reads what one line of a list says. */
final class EntryReader {

    private static final Sentences SAID = Sentences.near(EntryReader.class);

    private final Path list;
    private final int line;

    /**
     * For a line.
     *
     * @param line its number, from 1
     */
    EntryReader(Path list, int line) {
        this.list = list;
        this.line = line;
    }

    /** A refusal that names list and line. */
    static UnusableInputException refused(Path list, int line, String what) {
        return new UnusableInputException(SAID.say("at-line", list, line, what));
    }

    /** A line that is a file's name. */
    BatchEntry plain(String file) {
        return entry(List.of(ListColumn.FILE), List.of(file));
    }

    /**
     * A row of a table.
     *
     * @throws UnusableInputException if a cell cannot be understood
     */
    BatchEntry entry(List<ListColumn> columns, List<String> cells) {
        Map<ListColumn, String> said = new EnumMap<>(ListColumn.class);
        for (int i = 0; i < cells.size(); i++) {
            if (!cells.get(i).isEmpty()) {
                said.put(columns.get(i), cells.get(i));
            }
        }
        String file = said.get(ListColumn.FILE);
        if (file == null) {
            throw refused(list, line, SAID.say("no-file"));
        }
        return new BatchEntry(
                line,
                file,
                path(file),
                said.get(ListColumn.NAME),
                read(said, ListColumn.PROGRAMME, this::path),
                read(said, ListColumn.MODE, t -> CaptureMode.ofKey(t.toLowerCase(Locale.ROOT))),
                said.get(ListColumn.MACHINE_NAME),
                said.get(ListColumn.TAPE),
                read(said, ListColumn.TAPE_SPEED, TapeSpeed::parse),
                read(said, ListColumn.CHANNELS, ChannelChoice::parse),
                said.get(ListColumn.NOTE));
    }

    private <T> T read(
            Map<ListColumn, String> said, ListColumn column, Function<String, T> reader) {
        String text = said.get(column);
        if (text == null) {
            return null;
        }
        try {
            return reader.apply(text);
        } catch (IllegalArgumentException | UnusableInputException e) {
            String why = e.getMessage();
            throw refused(list, line, why.endsWith(".") ? why : why + ".");
        }
    }

    private Path path(String text) {
        try {
            return list.resolveSibling(text);
        } catch (InvalidPathException e) {
            throw refused(list, line, SAID.say("no-file-name", text));
        }
    }
}
