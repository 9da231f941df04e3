package offtape.report.fault;

import java.util.List;
import offtape.report.result.Verdict;

/**
 * What is likely wrong.
 *
 * @param faults likely causes, most likely first
 * @param soundLikelihood how likely none of the known faults is there, 0 to 1, or null if too
 *     little was measured to look for any
 */
public record FaultFinding(List<Verdict.Fault> faults, Double soundLikelihood) {

    /** Nothing could be looked for. */
    static final FaultFinding NONE = new FaultFinding(List.of(), null);

    /** Copies the list so that the record cannot change. */
    public FaultFinding {
        faults = List.copyOf(faults);
    }
}
