package offtape.report.render;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import offtape.core.unit.Quantity;
import offtape.report.batch.BatchRow;
import offtape.report.batch.BatchSummary;
import offtape.report.headline.Find;

/** A batch as a table for a spreadsheet: one row a return, one column a figure and channel. */
public final class BatchCsv {

    /** Name of the file. */
    public static final String NAME = "summary.csv";

    private static final int DECIMALS = 4;

    private BatchCsv() {}

    /**
     * The table; unknown figures are empty cells. Columns of figures are there as soon as one
     * return has results.
     */
    public static String of(BatchSummary batch) {
        List<String> heads =
                new ArrayList<>(
                        List.of(
                                "name",
                                "file",
                                "state",
                                "reason",
                                "decision",
                                "likeliest cause",
                                "limits failed"));
        List<String> figures = figures(batch);
        heads.addAll(figures);
        CsvTable table = new CsvTable(heads.toArray(String[]::new));
        batch.returns().forEach(row -> row(table, row, figures.size()));
        return table.toString();
    }

    private static List<String> figures(BatchSummary batch) {
        List<String> heads = new ArrayList<>();
        List<BatchRow.Figure> figures =
                batch.returns().stream()
                        .map(BatchRow::figures)
                        .filter(f -> !f.isEmpty())
                        .findFirst()
                        .orElse(List.of());
        for (BatchRow.Figure figure : figures) {
            String unit = " (" + figure.unit() + ")";
            if (figure.values().size() > 1) {
                Find.CHANNELS.forEach(c -> heads.add(figure.name() + ", " + c + unit));
            } else {
                heads.add(figure.name() + unit);
            }
        }
        return heads;
    }

    private static void row(CsvTable table, BatchRow row, int figures) {
        table.text(row.name())
                .text(row.file())
                .text(row.state().words())
                .text(Objects.requireNonNullElse(row.reason(), ""))
                .text(Objects.requireNonNullElse(row.decision(), ""))
                .text(Objects.requireNonNullElse(row.likeliestCause(), ""))
                .number(row.limitsFailed() == null ? null : row.limitsFailed().doubleValue(), 0);
        List<Quantity> values = row.figures().stream().flatMap(f -> f.values().stream()).toList();
        for (int i = 0; i < figures; i++) {
            boolean known = i < values.size() && values.get(i).isKnown();
            table.number(known ? values.get(i).value() : null, DECIMALS);
        }
        table.end();
    }
}
