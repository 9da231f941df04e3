package offtape.report.batch;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.headline.Headline;
import offtape.report.judge.DecisionWords;
import offtape.report.result.Results;
import offtape.report.result.Verdict;

/**
 * What one return gave.
 *
 * @param name of its session's folder
 * @param file the return as the list names it
 * @param state how things stand
 * @param reason why it was refused, plain sentences, or null
 * @param decision what to do with the machine, a short sentence, or null without results
 * @param likeliestCause name of the likeliest fault, or null if none is likely or there are no
 *     results
 * @param limitsFailed how many limits are failed beyond doubt, or null if none were held against it
 * @param figures the headline figures, always the same ones in the same order; none without results
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record BatchRow(
        String name,
        String file,
        BatchState state,
        String reason,
        String decision,
        String likeliestCause,
        Integer limitsFailed,
        List<Figure> figures) {

    /**
     * A headline figure.
     *
     * @param name the trade's name for it
     * @param unit of its values
     * @param values left and right, or one for the whole machine
     */
    public record Figure(String name, String unit, List<Quantity> values) {

        /** Copies the list. */
        public Figure {
            values = List.copyOf(values);
        }
    }

    /** Copies the list. */
    public BatchRow {
        figures = List.copyOf(figures);
    }

    /** A return whose turn has not come. */
    public static BatchRow waiting(String name, String file) {
        return new BatchRow(name, file, BatchState.WAITING, null, null, null, null, List.of());
    }

    /** A return that gave no session. */
    public static BatchRow refused(String name, String file, String reason) {
        return new BatchRow(name, file, BatchState.REFUSED, reason, null, null, null, List.of());
    }

    /** A return with a session. */
    public static BatchRow of(String name, String file, BatchState state, Results results) {
        Verdict verdict = results.verdict();
        long failed = verdict.checks().stream().filter(c -> c.outcome().equals("fail")).count();
        return new BatchRow(
                name,
                file,
                state,
                null,
                DecisionWords.of(verdict),
                verdict.faults().stream().findFirst().map(Verdict.Fault::name).orElse(null),
                verdict.checks().isEmpty() ? null : (Integer) (int) failed,
                Headline.of(results).stream()
                        .map(h -> new Figure(h.name(), h.unit(), h.figures()))
                        .toList());
    }
}
