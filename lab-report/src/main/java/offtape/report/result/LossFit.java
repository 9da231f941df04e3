package offtape.report.result;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.Objects;
import offtape.core.unit.Quantity;

/**
 * What takes the highs of one channel away, as far as its response tells: known causes fitted to
 * the quietest sweep.
 *
 * @param channel {@code left} or {@code right}
 * @param residual dB, root mean square of what the simplest set of causes leaves
 * @param unexplainedDb standard deviation of what no cause explains beyond the curve's own
 *     uncertainty, which widens the figures; 0 if nothing is left over
 * @param frequencyHz frequencies of the curves, rising; empty if nothing was fitted
 * @param fittedDb the curve of the simplest set that explains the response in dB on the scale of
 *     the response, same length
 * @param causes found or bounded, each once
 * @param alternatives the simplest sets of causes that explain the curve, that of the fewest first
 * @param correlations how alike two causes look
 * @param words what a reader should know, plain sentences
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record LossFit(
        String channel,
        Quantity residual,
        double unexplainedDb,
        double[] frequencyHz,
        double[] fittedDb,
        List<LossCause> causes,
        List<LossAlternative> alternatives,
        List<LossCorrelation> correlations,
        List<String> words) {

    /** Copies the lists so that the fit cannot change. */
    public LossFit {
        Objects.requireNonNull(channel, "channel");
        Columns.requireEven(frequencyHz, fittedDb);
        causes = List.copyOf(causes);
        alternatives = List.copyOf(alternatives);
        correlations = List.copyOf(correlations);
        words = List.copyOf(words);
    }

    /** A channel whose losses cannot be told, for a reason. */
    public static LossFit unknown(String channel, String reason) {
        double[] none = {};
        return new LossFit(
                channel,
                Quantity.unknown(reason),
                0,
                none,
                none,
                List.of(),
                List.of(),
                List.of(),
                List.of(reason));
    }
}
