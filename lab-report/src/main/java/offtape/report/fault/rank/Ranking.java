package offtape.report.fault.rank;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Weighs sets of up to three faults against each other and against a sound machine: the likelihood
 * averaged over all severities times how likely the set is beforehand.
 */
final class Ranking {

    /** Severities that are tried. */
    static final int SEVERITIES = 9;

    /** Forms of faults that explain most, alone or beside the best, are tried together. */
    private static final int PAIRED = 10;

    /** Pairs to which a third fault is tried. */
    private static final int TRIED_PAIRS = 12;

    /** How likely a machine is strange in no known way, beforehand. */
    private static final double STRANGE = 0.005;

    private final Likelihood likelihood;
    private final List<Candidate> candidates;

    Ranking(Likelihood likelihood, List<Candidate> candidates) {
        this.likelihood = likelihood;
        this.candidates = candidates;
    }

    /** How likely the machine is strange in no known way, against a sound one; a logarithm. */
    double strange() {
        return Math.log(STRANGE) + likelihood.logStrange();
    }

    /** All explanations that were tried; the first is that of a sound machine. */
    List<Explanation> explanations() {
        double sound = likelihood.log();
        List<Explanation> all = new ArrayList<>();
        all.add(new Explanation(List.of(), new int[0], sound, sound));
        List<Explanation> singles = candidates.stream().map(this::single).toList();
        List<Candidate> paired = paired(singles);
        List<Explanation> pairs = pairs(paired);
        all.addAll(singles);
        all.addAll(pairs);
        pairs.stream()
                .sorted(Comparator.comparingDouble(Explanation::log).reversed())
                .limit(TRIED_PAIRS)
                .flatMap(p -> paired.stream().filter(c -> !p.holds(c.code())).map(c -> third(p, c)))
                .forEach(all::add);
        return all;
    }

    /** What explains most alone, and what explains most of the rest beside the best of all. */
    private List<Candidate> paired(List<Explanation> singles) {
        Comparator<Explanation> byBest = Comparator.comparingDouble(Explanation::best);
        Explanation first = singles.stream().max(byBest).orElseThrow();
        Effect best = first.faults().get(0).effects()[first.severity()[0]];
        return Stream.concat(
                        singles.stream().sorted(byBest.reversed()).limit(PAIRED),
                        singles.stream()
                                .map(Explanation::faults)
                                .map(f -> beside(best, f.get(0)))
                                .sorted(byBest.reversed())
                                .limit(PAIRED))
                .map(e -> e.faults().get(0))
                .distinct()
                .toList();
    }

    /** A fault beside a given effect, at its most likely severity. */
    private Explanation beside(Effect other, Candidate c) {
        double[] logs =
                Arrays.stream(c.effects()).mapToDouble(e -> likelihood.log(other, e)).toArray();
        int best = largest(logs);
        return new Explanation(List.of(c), new int[] {best}, mean(logs), logs[best]);
    }

    private Explanation single(Candidate candidate) {
        double[] logs = Arrays.stream(candidate.effects()).mapToDouble(likelihood::log).toArray();
        int best = largest(logs);
        return new Explanation(
                List.of(candidate), new int[] {best}, candidate.prior() + mean(logs), logs[best]);
    }

    private List<Explanation> pairs(List<Candidate> paired) {
        return IntStream.range(0, paired.size())
                .boxed()
                .flatMap(
                        i ->
                                paired.subList(0, i).stream()
                                        .filter(b -> !b.code().equals(paired.get(i).code()))
                                        .map(b -> pair(paired.get(i), b)))
                .toList();
    }

    private Explanation pair(Candidate a, Candidate b) {
        double[] logs =
                Arrays.stream(a.effects())
                        .flatMapToDouble(
                                x ->
                                        Arrays.stream(b.effects())
                                                .mapToDouble(y -> likelihood.log(x, y)))
                        .toArray();
        int best = largest(logs);
        return new Explanation(
                List.of(a, b),
                new int[] {best / b.effects().length, best % b.effects().length},
                a.prior() + b.prior() + mean(logs),
                logs[best]);
    }

    /** A third fault, tried at the most likely severities of the other two. */
    private Explanation third(Explanation pair, Candidate c) {
        Effect a = pair.faults().get(0).effects()[pair.severity()[0]];
        Effect b = pair.faults().get(1).effects()[pair.severity()[1]];
        double[] logs =
                Arrays.stream(c.effects()).mapToDouble(e -> likelihood.log(a, b, e)).toArray();
        int best = largest(logs);
        return new Explanation(
                Stream.concat(pair.faults().stream(), Stream.of(c)).toList(),
                new int[] {pair.severity()[0], pair.severity()[1], best},
                pair.log() + c.prior() + mean(logs) - pair.best(),
                logs[best]);
    }

    private static int largest(double[] logs) {
        return IntStream.range(0, logs.length)
                .boxed()
                .max(Comparator.comparingDouble(i -> logs[i]))
                .orElseThrow();
    }

    /** Logarithm of the mean of what these are logarithms of. */
    private static double mean(double[] logs) {
        return Logs.sum(Arrays.stream(logs)) - Math.log(logs.length);
    }
}
