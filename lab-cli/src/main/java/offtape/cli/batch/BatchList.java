package offtape.cli.batch;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import offtape.core.fault.BoundedText;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.Sentences;

/**
 * Reads a list of returns: a text with one file a line, or a table whose first line names its
 * columns, {@code file} among them. It is UTF-8; empty lines and lines that start with {@code #}
 * are passed over; relative paths count from the folder of the list.
 */
public final class BatchList {

    private static final Sentences SAID = Sentences.near(BatchList.class);

    private static final int MOST_MEBIBYTES = 16;

    private final Path list;
    private final List<BatchEntry> entries = new ArrayList<>();

    private BatchList(Path list) {
        this.list = list;
    }

    /**
     * The returns of a list, each once and with the name of its session.
     *
     * @param list the file
     * @param otherwise folder of the programme of returns for which the list names none, or null
     * @throws UnusableInputException if it cannot be read, says what cannot be understood or names
     *     no return, says two things of one return, or two sessions would get the same name
     */
    public static ListedReturns read(Path list, Path otherwise) {
        BatchList reading = new BatchList(list);
        reading.understand(text(list));
        if (reading.entries.isEmpty()) {
            throw new UnusableInputException(SAID.say("no-returns", list));
        }
        for (BatchEntry entry : reading.entries) {
            if (entry.programme() == null && otherwise == null) {
                throw reading.refused(
                        entry.line(), SAID.say("no-programme") + " " + SAID.say("give-programme"));
            }
        }
        Repeats repeats = new Repeats(list);
        List<BatchEntry> once = repeats.without(reading.entries);
        return new ListedReturns(new SessionNames(list).given(once), repeats.notes());
    }

    private static String text(Path list) {
        try {
            String text =
                    BoundedText.read(list, MOST_MEBIBYTES << 20)
                            .orElseThrow(
                                    () ->
                                            new UnusableInputException(
                                                    SAID.say("list-too-large", list, MOST_MEBIBYTES)
                                                            + " "
                                                            + SAID.say("list-instead")));
            // some editors begin a file with a mark of its encoding
            return text.startsWith("\ufeff") ? text.substring(1) : text;
        } catch (CharacterCodingException e) {
            throw new UnusableInputException(
                    SAID.say("list-not-text", list) + " " + SAID.say("save-list"), e);
        } catch (IOException e) {
            throw new UnusableInputException(SAID.say("list-unreadable", list), e);
        }
    }

    private void understand(String text) {
        if (isTable(text)) {
            List<TableText.Row> rows = rows(text);
            Columns columns = new Columns(rows.get(0).cells(), rows.get(0).line());
            rows.stream().skip(1).forEach(row -> entries.add(columns.entry(row)));
        } else {
            lines(text);
        }
    }

    private static boolean isTable(String text) {
        String first =
                text.lines().map(String::strip).filter(BatchList::says).findFirst().orElse("");
        try {
            return TableText.rows(first).stream()
                    .flatMap(row -> row.cells().stream())
                    .anyMatch(ListColumn.FILE::isCalled);
        } catch (IllegalArgumentException e) {
            // a name with a quote in it
            return false;
        }
    }

    private static boolean says(String line) {
        return !line.isEmpty() && !line.startsWith("#");
    }

    private List<TableText.Row> rows(String text) {
        try {
            return TableText.rows(text);
        } catch (IllegalArgumentException e) {
            throw new UnusableInputException(list + ", " + e.getMessage(), e);
        }
    }

    private void lines(String text) {
        int number = 0;
        for (String line : text.lines().toList()) {
            number++;
            String name = line.strip();
            if (says(name)) {
                entries.add(new EntryReader(list, number).plain(unquoted(name)));
            }
        }
    }

    private static String unquoted(String name) {
        boolean quoted = name.length() > 2 && name.startsWith("\"") && name.endsWith("\"");
        return quoted ? name.substring(1, name.length() - 1) : name;
    }

    private UnusableInputException refused(int line, String what) {
        return EntryReader.refused(list, line, what);
    }

    /** What stands in which column. */
    private final class Columns {

        private final List<ListColumn> order = new ArrayList<>();

        Columns(List<String> heads, int line) {
            for (String head : heads) {
                ListColumn column =
                        ListColumn.of(head)
                                .orElseThrow(
                                        () ->
                                                refused(
                                                        line,
                                                        SAID.say(
                                                                "no-column",
                                                                head,
                                                                ListColumn.names())));
                if (order.contains(column)) {
                    throw refused(line, SAID.say("column-twice", column.key()));
                }
                order.add(column);
            }
        }

        BatchEntry entry(TableText.Row row) {
            if (row.cells().size() > order.size()) {
                throw refused(
                        row.line(),
                        SAID.say("too-many-cells", row.cells().size(), order.size())
                                + " "
                                + SAID.say("double-quotes"));
            }
            return new EntryReader(list, row.line()).entry(order, row.cells());
        }
    }
}
