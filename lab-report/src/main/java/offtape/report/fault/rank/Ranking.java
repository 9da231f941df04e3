package offtape.report.fault.rank;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Weighs sets of up to six faults against each other and against a sound machine: the likelihood
 * averaged over all severities times how likely the set is beforehand. Sets grow fault by fault
 * from those that explain most; whenever one is added, the severities of all are sought anew.
 */
final class Ranking {

    /** Severities that are tried. */
    static final int SEVERITIES = 9;

    private static final int MOST_FAULTS = 6;

    /** Sets of one size that are tried with one more fault. */
    private static final int GROWN = 8;

    /** Faults that are tried in earnest beside a set, of all that are looked at. */
    private static final int ADDED = 6;

    /** Sets that are less likely than the best by this factor are grown no further; a logarithm. */
    private static final double HOPELESS = 9;

    /** How likely a machine is strange in no known way, beforehand. */
    private static final double STRANGE = 0.005;

    private final SymptomLikelihood likelihood;
    private final List<Candidate> candidates;

    Ranking(SymptomLikelihood likelihood, List<Candidate> candidates) {
        this.likelihood = likelihood;
        this.candidates = candidates;
    }

    /** How likely the machine is strange in no known way, against a sound one; a logarithm. */
    double strange() {
        return Math.log(STRANGE) + likelihood.logStrange();
    }

    /** All explanations that were tried; the first is that of a sound machine. */
    List<Explanation> explanations() {
        double log = likelihood.log();
        Explanation sound = new Explanation(List.of(), new int[0], log, log);
        List<Explanation> all = new ArrayList<>(List.of(sound));
        List<Explanation> grown = candidates.stream().map(c -> with(sound, c)).toList();
        all.addAll(grown);
        double best = top(all);
        for (int size = 2; size <= MOST_FAULTS && top(grown) > best - HOPELESS; size++) {
            Map<String, Explanation> next = new LinkedHashMap<>();
            likeliest(grown).flatMap(this::grown).forEach(e -> next.putIfAbsent(e.name(), e));
            grown = List.copyOf(next.values());
            all.addAll(grown);
            best = top(all);
        }
        return all;
    }

    private static double top(List<Explanation> sets) {
        return sets.stream().mapToDouble(Explanation::log).max().orElse(Double.NEGATIVE_INFINITY);
    }

    private static Stream<Explanation> likeliest(List<Explanation> sets) {
        return sets.stream()
                .sorted(Comparator.comparingDouble(Explanation::log).reversed())
                .limit(GROWN);
    }

    /** A set with each fault that explains most of the rest. */
    private Stream<Explanation> grown(Explanation set) {
        return candidates.stream()
                .filter(c -> !set.holds(c.code()))
                .sorted(Comparator.comparingDouble((Candidate c) -> beside(set, c)).reversed())
                .limit(ADDED)
                .map(c -> with(set, c));
    }

    /** Prior and likelihood of a further fault at its best, the others left as they are. */
    private double beside(Explanation set, Candidate c) {
        Effect[] effects = Arrays.copyOf(set.effects(), set.faults().size() + 1);
        double[] logs = logs(effects, effects.length - 1, c);
        return c.prior() + logs[largest(logs)];
    }

    private Explanation with(Explanation set, Candidate c) {
        List<Candidate> faults = Stream.concat(set.faults().stream(), Stream.of(c)).toList();
        int[] severity = Arrays.copyOf(set.severity(), faults.size());
        Effect[] effects = Arrays.copyOf(set.effects(), faults.size());
        int last = faults.size() - 1;
        severity[last] = largest(logs(effects, last, c));
        effects[last] = c.effects()[severity[last]];
        while (improved(faults, severity, effects)) {
            // until no severity alone can be better
        }
        return explained(faults, severity, effects);
    }

    /** Sets each severity to the best beside the others; false if all were. */
    private boolean improved(List<Candidate> faults, int[] severity, Effect[] effects) {
        double before = likelihood.log(effects);
        for (int i = 0; i < severity.length; i++) {
            Candidate c = faults.get(i);
            severity[i] = largest(logs(effects, i, c));
            effects[i] = c.effects()[severity[i]];
        }
        return likelihood.log(effects) > before;
    }

    /** The likelihood is averaged over the severity of each fault beside the best of the others. */
    private Explanation explained(List<Candidate> faults, int[] severity, Effect[] effects) {
        double best = likelihood.log(effects);
        double log = best;
        for (int i = 0; i < severity.length; i++) {
            Candidate c = faults.get(i);
            log += c.prior() + mean(logs(effects, i, c)) - best;
        }
        return new Explanation(faults, severity, log, best);
    }

    /** Likelihoods over the severities of one fault of a set. */
    private double[] logs(Effect[] effects, int index, Candidate c) {
        Effect[] tried = effects.clone();
        double[] logs = new double[c.effects().length];
        for (int k = 0; k < logs.length; k++) {
            tried[index] = c.effects()[k];
            logs[k] = likelihood.log(tried);
        }
        return logs;
    }

    private static int largest(double[] logs) {
        int best = 0;
        for (int k = 1; k < logs.length; k++) {
            best = logs[k] > logs[best] ? k : best;
        }
        return best;
    }

    /** Logarithm of the mean of what these are logarithms of. */
    private static double mean(double[] logs) {
        return Logs.sum(Arrays.stream(logs)) - Math.log(logs.length);
    }
}
