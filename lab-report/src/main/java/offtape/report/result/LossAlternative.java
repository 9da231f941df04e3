package offtape.report.result;

import java.util.List;

/**
 * A set of causes that together explain a response as well as any, none of which can be spared.
 *
 * @param causes names as in {@link LossCause}; none if nothing is lost
 * @param excess χ² above that of the best set, 0 to 6, within which sets explain it as well
 * @param residualDb root mean square of what it leaves
 * @param text the causes with their figures in words
 */
public record LossAlternative(List<String> causes, double excess, double residualDb, String text) {

    /** Copies the list so that the record cannot change. */
    public LossAlternative {
        causes = List.copyOf(causes);
    }
}
