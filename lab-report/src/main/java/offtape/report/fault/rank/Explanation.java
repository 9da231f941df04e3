package offtape.report.fault.rank;

import java.util.List;

/**
 * A set of faults as the cause of what a session shows.
 *
 * @param faults none, one or more
 * @param severity index of the most likely severity of each
 * @param log logarithm of prior times likelihood, not normed
 * @param best logarithm of the likelihood at these severities
 */
record Explanation(List<Candidate> faults, int[] severity, double log, double best) {

    boolean holds(String code) {
        return faults.stream().anyMatch(f -> f.code().equals(code));
    }
}
