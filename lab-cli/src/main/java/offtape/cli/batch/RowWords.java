package offtape.cli.batch;

import java.util.Locale;
import java.util.Optional;
import offtape.cli.terminal.Terminal;
import offtape.core.text.Phrases;
import offtape.report.batch.BatchRow;

/**
 * What a batch's rows say, in the reader's language.
 *
 * @param phrases those of the package
 */
public record RowWords(Phrases phrases) {

    /** The words spoken on a terminal. */
    public static RowWords on(Terminal terminal) {
        return new RowWords(terminal.phrases(RowWords.class));
    }

    /** How things stand with a return. */
    public String state(BatchRow row) {
        return phrases.say("batch.state-" + row.state().name().toLowerCase(Locale.ROOT));
    }

    /** Why it was refused, or what was decided of it; empty if there is nothing to tell. */
    public Optional<String> outcome(BatchRow row) {
        return row.reason() == null
                ? Optional.ofNullable(row.decision()).map(this::decision)
                : Optional.of(phrases.told(row.reason()));
    }

    private String decision(String key) {
        return switch (key) {
            case "keep", "service", "let-go" -> phrases.say("batch.decision-" + key);
            default -> key;
        };
    }

    /** A line on a return that was just done. */
    String line(int finished, int all, BatchRow row) {
        return outcome(row)
                .map(o -> phrases.say("batch.line", finished, all, row.name(), state(row), o))
                .orElseGet(
                        () ->
                                phrases.say(
                                        "batch.line-alone", finished, all, row.name(), state(row)));
    }
}
