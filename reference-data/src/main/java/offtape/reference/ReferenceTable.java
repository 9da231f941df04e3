package offtape.reference;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;

/**
 * A published table: its figures and where they come from.
 *
 * @param name name of the table, that of its file without extension
 * @param source publication the figures come from
 * @param clause place in the publication, "-" if there is none
 * @param seen how far the figures are confirmed: begins with stored, memory or derived, or refers
 *     to a column of that name
 * @param columns the columns in order
 * @param rows the rows in order, each with one cell a column
 */
public record ReferenceTable(
        String name,
        String source,
        String clause,
        String seen,
        List<Column> columns,
        List<List<JsonNode>> rows) {

    /** A column: its name and the unit of its figures, null if it holds words. */
    public record Column(String name, String unit) {}

    /**
     * Checks that the table says where it comes from and that its rows fit its columns.
     *
     * @throws IllegalArgumentException if not
     */
    public ReferenceTable {
        requireText(name, "source", source);
        requireText(name, "seen", seen);
        requireText(name, "clause", clause);
        columns = List.copyOf(columns);
        List<List<JsonNode>> copies = new ArrayList<>();
        for (List<JsonNode> row : rows) {
            if (row.size() != columns.size()) {
                throw new IllegalArgumentException(
                        "table " + name + " has a row of " + row.size() + " cells: " + row);
            }
            copies.add(List.copyOf(row));
        }
        rows = List.copyOf(copies);
    }

    /**
     * The table of that name.
     *
     * @param name such as {@code wf-weighting-iec60386}
     * @throws IllegalArgumentException if there is none, or it lacks its source
     */
    public static ReferenceTable load(String name) {
        return ReferenceTableReader.read(name);
    }

    /** Number of rows. */
    public int size() {
        return rows.size();
    }

    /**
     * Unit of a column, null if it holds words.
     *
     * @throws IllegalArgumentException if there is no such column
     */
    public String unit(String column) {
        return columns.get(index(column)).unit();
    }

    /**
     * All figures of a column.
     *
     * @throws IllegalArgumentException if there is no such column or a cell holds no figure
     */
    public double[] numbers(String column) {
        double[] numbers = new double[size()];
        for (int row = 0; row < numbers.length; row++) {
            numbers[row] = number(row, column);
        }
        return numbers;
    }

    /**
     * A figure.
     *
     * @throws IllegalArgumentException if there is no such column or the cell holds no figure
     */
    public double number(int row, String column) {
        JsonNode cell = cell(row, column);
        if (!cell.isNumber()) {
            throw new IllegalArgumentException(
                    "table " + name + ", row " + row + ", " + column + " is no figure: " + cell);
        }
        return cell.doubleValue();
    }

    /** Whether a cell holds a figure. */
    public boolean hasNumber(int row, String column) {
        return cell(row, column).isNumber();
    }

    /** The text of a cell; figures as they are written in the table, null for an empty cell. */
    public String text(int row, String column) {
        JsonNode cell = cell(row, column);
        return cell.isNull() ? null : cell.asText();
    }

    private JsonNode cell(int row, String column) {
        return rows.get(row).get(index(column));
    }

    private int index(String column) {
        for (int i = 0; i < columns.size(); i++) {
            if (columns.get(i).name().equals(column)) {
                return i;
            }
        }
        throw new IllegalArgumentException("table " + name + " has no column " + column);
    }

    private static void requireText(String name, String member, String text) {
        if (text == null || text.isBlank()) {
            throw new IllegalArgumentException("table " + name + " does not state its " + member);
        }
    }
}
