package offtape.report.render;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import offtape.core.text.InertText;

/**
 * A table as RFC 4180 has it: comma, double quotes where needed, lines end with CR LF. A text that
 * a spreadsheet would take for a formula gets an apostrophe before it; what looks like a number in
 * it is text all the same. Numbers stay numbers.
 */
final class CsvTable {

    /** The signs, and their wide forms, which spreadsheets for East Asia take for the same. */
    private static final String SIGNS = "[=+\\-@\uFF1D\uFF0B\uFF0D\uFF20]";

    private static final Pattern FORMULA = Pattern.compile("^(?:\\s*" + SIGNS + "|[\t\n])");

    /** Where a spreadsheet that parts cells by semicolons or tabs would see another cell begin. */
    private static final Pattern FORMULA_WITHIN =
            Pattern.compile("([;\t\n][\\s\"]*)(?=" + SIGNS + ")");

    private final List<List<Cell>> rows = new ArrayList<>();
    private List<Cell> row = new ArrayList<>();

    /**
     * What stands in one place.
     *
     * @param text as the table writes it
     * @param isNumber whether it is a number; a missing one is an empty text
     */
    record Cell(String text, boolean isNumber) {}

    /** Starts the table with its heads. */
    CsvTable(String... heads) {
        for (String head : heads) {
            text(head);
        }
        end();
    }

    /** A cell of text. */
    CsvTable text(String text) {
        row.add(new Cell(disarmed(visible(text)), false));
        return this;
    }

    /** A cell with a number with a decimal point and at most so many decimals; empty if null. */
    CsvTable number(Double value, int decimals) {
        if (value == null || !Double.isFinite(value)) {
            row.add(new Cell("", false));
            return this;
        }
        BigDecimal rounded = new BigDecimal(value).setScale(decimals, RoundingMode.HALF_UP);
        String shown = rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
        row.add(new Cell(shown, true));
        return this;
    }

    /** Ends a row. */
    CsvTable end() {
        rows.add(List.copyOf(row));
        row = new ArrayList<>();
        return this;
    }

    /** The ended rows, the heads first. */
    List<List<Cell>> rows() {
        return List.copyOf(rows);
    }

    @Override
    public String toString() {
        StringBuilder out = new StringBuilder();
        for (List<Cell> cells : rows) {
            out.append(cells.stream().map(c -> quoted(c.text())).collect(Collectors.joining(",")))
                    .append("\r\n");
        }
        return out.toString();
    }

    private static String disarmed(String text) {
        String within = FORMULA_WITHIN.matcher(text).replaceAll("$1'");
        return FORMULA.matcher(text).find() ? "'" + within : within;
    }

    /** Tabs and line ends are part of a cell; nothing else is that steers what shows the table. */
    private static String visible(String text) {
        return InertText.lines(text.replace("\r\n", "\n").replace('\r', '\n'));
    }

    private static String quoted(String text) {
        boolean plain = text.chars().noneMatch(c -> c == ',' || c == '"' || c == '\r' || c == '\n');
        return plain ? text : '"' + text.replace("\"", "\"\"") + '"';
    }
}
