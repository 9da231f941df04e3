package offtape.cli.batch;

import java.util.ArrayList;
import java.util.List;
import offtape.core.text.Sentences;

/**
 * Splits a table into records as RFC 4180 has it. The separator is a comma, semicolon or tab,
 * whichever comes first in the first record. Lines that are empty or start with {@code #} are
 * passed over.
 */
final class TableText {

    private static final Sentences SAID = Sentences.near(TableText.class);

    private final String text;
    private final List<Row> rows = new ArrayList<>();
    private final StringBuilder cell = new StringBuilder();
    private char separator;
    private int at;
    private int line = 1;

    /**
     * A record.
     *
     * @param line where it begins, from 1
     * @param cells without the quotes and the blanks around them
     */
    record Row(int line, List<String> cells) {}

    private TableText(String text) {
        this.text = text;
        this.separator = 0;
    }

    /**
     * All records.
     *
     * @throws IllegalArgumentException with a plain sentence if a quote is not closed
     */
    static List<Row> rows(String text) {
        TableText table = new TableText(text);
        while (table.at < text.length()) {
            table.row();
        }
        return table.rows;
    }

    private void row() {
        if (text.charAt(at) == '#') {
            skipLine();
            return;
        }
        int begins = line;
        List<String> cells = new ArrayList<>();
        boolean more = true;
        while (more) {
            more = cell();
            cells.add(cell.toString().strip());
            cell.setLength(0);
        }
        endLine();
        if (cells.size() > 1 || !cells.get(0).isEmpty()) {
            rows.add(new Row(begins, cells));
        }
    }

    /** Reads up to the end of a cell; returns whether another follows. */
    private boolean cell() {
        while (at < text.length() && !isLineEnd(text.charAt(at))) {
            char c = text.charAt(at++);
            if (c == '"' && cell.toString().isBlank()) {
                cell.setLength(0);
                quoted();
            } else if (isSeparator(c)) {
                separator = c;
                return true;
            } else {
                cell.append(c);
            }
        }
        return false;
    }

    private boolean isSeparator(char c) {
        return separator == 0 ? c == ',' || c == ';' || c == '\t' : c == separator;
    }

    private void quoted() {
        int begins = line;
        while (at < text.length()) {
            char c = text.charAt(at++);
            if (c == '"' && at < text.length() && text.charAt(at) == '"') {
                at++;
            } else if (c == '"') {
                return;
            }
            line += c == '\n' ? 1 : 0;
            cell.append(c);
        }
        throw new IllegalArgumentException("line " + begins + ": " + SAID.say("open-quote"));
    }

    private void skipLine() {
        while (at < text.length() && !isLineEnd(text.charAt(at))) {
            at++;
        }
        endLine();
    }

    private void endLine() {
        if (at < text.length()) {
            boolean pair = text.startsWith("\r\n", at);
            at += pair ? 2 : 1;
            line++;
        }
    }

    private static boolean isLineEnd(char c) {
        return c == '\n' || c == '\r';
    }
}
