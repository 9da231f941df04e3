package offtape.report.fault.rank;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

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

    /** What the faults do at these severities. */
    Effect[] effects() {
        return IntStream.range(0, severity.length)
                .mapToObj(i -> faults.get(i).effects()[severity[i]])
                .toArray(Effect[]::new);
    }

    /** The same for the same faults in whatever order. */
    String name() {
        return faults.stream().map(Candidate::name).sorted().collect(Collectors.joining("|"));
    }
}
