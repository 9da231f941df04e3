package offtape.report.workbook;

import java.util.List;

/**
 * One sheet of a workbook.
 *
 * @param name at most 31 letters, none of {@code []:*?/\\}
 * @param rows the cells from the top left corner on; the first row holds the heads
 */
public record Sheet(String name, List<List<Cell>> rows) {

    private static final int MOST_LETTERS = 31;

    /** Refuses names that spreadsheets refuse. */
    public Sheet {
        if (name.isEmpty()
                || name.length() > MOST_LETTERS
                || name.matches(".*[\\[\\]:*?/\\\\].*")) {
            throw new IllegalArgumentException("no name of a sheet: " + name);
        }
        rows = rows.stream().map(List::copyOf).toList();
    }
}
