package offtape.cli.command;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import offtape.cli.batch.RowWords;
import offtape.cli.terminal.Terminal;
import offtape.core.unit.Quantity;
import offtape.report.batch.BatchRow;
import offtape.report.batch.BatchState;
import offtape.report.batch.BatchSummary;
import offtape.report.headline.Headline;

/** A batch as a table for the terminal, and what was done in one sentence. */
final class BatchWords {

    private static final String NOTHING = "–";

    private final Speech speech;
    private final RowWords rows;

    /** The words spoken on a terminal. */
    BatchWords(Terminal terminal) {
        this.speech = Speech.of(terminal);
        this.rows = RowWords.on(terminal);
    }

    /** One line a return under a line of heads; columns as wide as they need be. */
    List<String> table(BatchSummary batch) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(
                List.of(
                        speech.say("batch.name"),
                        speech.say("batch.state"),
                        speech.say("batch.speed"),
                        speech.say("batch.flutter"),
                        speech.say("batch.upper-edge"),
                        speech.say("batch.noise"),
                        speech.say("batch.decision")));
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

    private List<String> cells(BatchRow row) {

        return List.of(
                row.name(),
                rows.state(row),
                figure(row, Headline.SPEED_DEVIATION, speech::signedValue, 1),
                figure(row, Headline.WOW_AND_FLUTTER, speech::value, 1),
                figure(row, Headline.UPPER_EDGE, speech::value, 1e-3),
                figure(row, Headline.NOISE, speech::value, 1),
                rows.outcome(row).orElse(NOTHING));
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
    String counts(BatchSummary batch) {
        int returns = batch.returns().size();
        return speech.say(
                returns == 1 ? "batch.count-one" : "batch.counts",
                returns,
                batch.count(BatchState.MEASURED),
                batch.count(BatchState.UNCHANGED),
                batch.count(BatchState.REFUSED));
    }
}
