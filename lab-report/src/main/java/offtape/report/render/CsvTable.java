package offtape.report.render;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * A table as RFC 4180 has it: comma, double quotes where needed, lines end with CR LF. A text that
 * a spreadsheet would take for a formula gets an apostrophe before it.
 */
final class CsvTable {

    private static final String FORMULA_STARTS = "=+-@\t\r\n";

    private final StringBuilder out = new StringBuilder();
    private final List<String> row = new ArrayList<>();

    /** Starts the table with its heads. */
    CsvTable(String... heads) {
        for (String head : heads) {
            text(head);
        }
        end();
    }

    /** A cell of text. */
    CsvTable text(String text) {
        boolean formula = !text.isEmpty() && FORMULA_STARTS.indexOf(text.charAt(0)) >= 0;
        row.add(quoted(formula ? "'" + text : text));
        return this;
    }

    /** A cell with a number with a decimal point and at most so many decimals; empty if null. */
    CsvTable number(Double value, int decimals) {
        if (value == null || !Double.isFinite(value)) {
            row.add("");
            return this;
        }
        BigDecimal rounded = new BigDecimal(value).setScale(decimals, RoundingMode.HALF_UP);
        row.add(rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString());
        return this;
    }

    /** Ends a row. */
    CsvTable end() {
        out.append(row.stream().collect(Collectors.joining(","))).append("\r\n");
        row.clear();
        return this;
    }

    @Override
    public String toString() {
        return out.toString();
    }

    private static String quoted(String text) {
        boolean plain = text.chars().noneMatch(c -> c == ',' || c == '"' || c == '\r' || c == '\n');
        return plain ? text : '"' + text.replace("\"", "\"\"") + '"';
    }
}
