package offtape.report.render;

import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/**
 * A table of numbers. The first cell of a row heads it; wide tables scroll in a region of their own
 * that can be reached with the keyboard.
 *
 * @param caption what the table holds
 * @param heads heads of the columns with their units
 * @param rows the cells as text, as many a row as there are heads
 */
record DataTable(String caption, List<String> heads, List<List<String>> rows) {

    /** What stands in a cell that has nothing to say. */
    static final String NOTHING = "–";

    private static final Pattern NUMBER = Pattern.compile("[+−]?[0-9.,]+|–");

    /** Refuses rows of another length than the heads. */
    DataTable {
        for (List<String> row : rows) {
            if (row.size() != heads.size()) {
                throw new IllegalArgumentException("a row has as many cells as there are heads");
            }
        }
    }

    /** The same table without the columns in which no row has anything to say. */
    DataTable withoutEmptyColumns() {
        List<Integer> kept =
                IntStream.range(0, heads.size())
                        .filter(i -> rows.stream().anyMatch(row -> !NOTHING.equals(row.get(i))))
                        .boxed()
                        .toList();
        return new DataTable(
                caption,
                kept.stream().map(heads::get).toList(),
                rows.stream().map(row -> kept.stream().map(row::get).toList()).toList());
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
        for (int i = 0; i < heads.size(); i++) {
            out.element("th", heads.get(i), attributes(i, "scope", "col"));
        }
        out.close("tr").close("thead").open("tbody").line();
        rows.forEach(row -> out.add(row(row)).line());
        return out.close("tbody").close("table").close("div").line();
    }

    /** The table folded away behind a line that says what it holds; nothing if it is empty. */
    Markup folded(Wording words) {
        if (rows.isEmpty()) {
            return new Markup();
        }
        return new Markup()
                .open("details")
                .element("summary", words.say("page.numbers", words.unbroken(caption)))
                .add(open())
                .close("details")
                .line();
    }

    private Markup row(List<String> cells) {
        Markup out = new Markup().open("tr");
        out.element("th", cells.get(0), attributes(0, "scope", "row"));
        for (int i = 1; i < cells.size(); i++) {
            out.element("td", cells.get(i), attributes(i));
        }
        return out.close("tr");
    }

    /** {@code given}, and the class that sets columns of bare numbers flush right. */
    private String[] attributes(int column, String... given) {
        boolean numbers = rows.stream().allMatch(row -> NUMBER.matcher(row.get(column)).matches());
        if (!numbers || rows.isEmpty()) {
            return given;
        }
        String[] all = Arrays.copyOf(given, given.length + 2);
        all[given.length] = "class";
        all[given.length + 1] = "number";
        return all;
    }
}
