package offtape.cli.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;
import offtape.core.unit.Quantity;
import offtape.report.batch.BatchRow;
import offtape.report.batch.BatchState;
import offtape.report.batch.BatchSummary;
import offtape.report.headline.Headline;

/** A batch as a table for the terminal, and what was done in one sentence. */
final class BatchWords {

    private static final String NOTHING = "–";

    private BatchWords() {}

    /** One line a return under a line of heads; columns as wide as they need be. */
    static List<String> table(BatchSummary batch) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(
                List.of(
                        "Name",
                        "State",
                        "Speed, %",
                        "Flutter, %",
                        "Upper edge, kHz",
                        "Noise A, dB",
                        "Decision"));
        batch.returns().forEach(row -> rows.add(cells(row)));
        int[] widths = new int[rows.get(0).size() - 1];
        for (List<String> row : rows) {
            for (int i = 0; i < widths.length; i++) {
                widths[i] = Math.max(widths[i], row.get(i).length());
            }
        }
        return rows.stream().map(row -> line(row, widths)).toList();
    }

    private static String line(List<String> row, int[] widths) {
        StringBuilder line = new StringBuilder();
        for (int i = 0; i < widths.length; i++) {
            line.append(row.get(i)).append(" ".repeat(widths[i] - row.get(i).length() + 2));
        }
        return line.append(row.get(widths.length)).toString().stripTrailing();
    }

    private static List<String> cells(BatchRow row) {
        boolean refused = row.state() == BatchState.REFUSED;
        return List.of(
                row.name(),
                row.state().words(),
                figure(row, Headline.SPEED_DEVIATION, Figures::signedValue, 1),
                figure(row, Headline.WOW_AND_FLUTTER, Figures::value, 1),
                figure(row, Headline.UPPER_EDGE, Figures::value, 1e-3),
                figure(row, Headline.NOISE, Figures::value, 1),
                Objects.requireNonNullElse(refused ? row.reason() : row.decision(), NOTHING));
    }

    /** Left and right, or one for both; a dash where nothing is known. */
    private static String figure(
            BatchRow row, String name, Function<Quantity, String> number, double factor) {
        return row.figures().stream()
                .filter(f -> f.name().equals(name))
                .flatMap(f -> f.values().stream())
                .map(q -> number(q, number, factor))
                .collect(Collectors.collectingAndThen(Collectors.toList(), BatchWords::joined));
    }

    private static String joined(List<String> numbers) {
        boolean none = numbers.stream().allMatch(NOTHING::equals);
        return none ? NOTHING : String.join(" ", numbers);
    }

    private static String number(Quantity q, Function<Quantity, String> number, double factor) {
        return q.isKnown()
                ? number.apply(
                        Quantity.known(q.value() * factor, q.unit(), q.uncertainty() * factor))
                : NOTHING;
    }

    /** How many of each state, such as {@code 3 measured, 2 left alone as unchanged.} */
    static String counts(BatchSummary batch) {
        String text =
                String.format(
                        Locale.ROOT,
                        "%d measured, %d unchanged and left alone, %d refused.",
                        batch.count(BatchState.MEASURED),
                        batch.count(BatchState.UNCHANGED),
                        batch.count(BatchState.REFUSED));
        int returns = batch.returns().size();
        return returns + (returns == 1 ? " return: " : " returns: ") + text;
    }
}
