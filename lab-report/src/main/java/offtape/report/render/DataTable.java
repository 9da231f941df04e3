package offtape.report.render;

import java.util.List;

/**
 * A table of numbers. The first cell of a row heads it; wide tables scroll in a region of their own
 * that can be reached with the keyboard.
 *
 * @param caption what the table holds
 * @param heads heads of the columns with their units
 * @param rows the cells as text, as many a row as there are heads
 */
record DataTable(String caption, List<String> heads, List<List<String>> rows) {

    /** Refuses rows of another length than the heads. */
    DataTable {
        for (List<String> row : rows) {
            if (row.size() != heads.size()) {
                throw new IllegalArgumentException("a row has as many cells as there are heads");
            }
        }
    }

    /** The table, always to be seen. */
    Markup open() {
        Markup out =
                new Markup()
                        .open(
                                "div",
                                "class",
                                "scroll",
                                "tabindex",
                                "0",
                                "role",
                                "region",
                                "aria-label",
                                caption)
                        .open("table", "class", "data")
                        .element("caption", caption)
                        .open("thead")
                        .open("tr");
        heads.forEach(head -> out.element("th", head, "scope", "col"));
        out.close("tr").close("thead").open("tbody").line();
        rows.forEach(row -> out.add(row(row)).line());
        return out.close("tbody").close("table").close("div").line();
    }

    /** The table folded away behind a line that says what it holds; nothing if it is empty. */
    Markup folded() {
        if (rows.isEmpty()) {
            return new Markup();
        }
        return new Markup()
                .open("details")
                .element("summary", "The numbers: " + caption)
                .add(open())
                .close("details")
                .line();
    }

    private static Markup row(List<String> cells) {
        Markup out = new Markup().open("tr").element("th", cells.get(0), "scope", "row");
        cells.stream().skip(1).forEach(cell -> out.element("td", cell));
        return out.close("tr");
    }
}
