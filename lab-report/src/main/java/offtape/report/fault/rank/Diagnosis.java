package offtape.report.fault.rank;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import offtape.report.fault.symptom.Reading;

/**
 * How likely each fault is there.
 *
 * @param faults most likely first
 * @param sound how likely none is there and nothing is strange, 0 to 1
 * @param strange how likely something is wrong that is none of the known faults, 0 to 1
 * @param sole each fault as if it were the only one, at its most likely severity, for comparisons;
 *     best first
 */
public record Diagnosis(List<Ranked> faults, double sound, double strange, List<Ranked> sole) {

    /** Each fault is there in about so large a share of machines (an assumption). */
    private static final double PRIOR = 0.05;

    /** Dirt is the commonest of all by far, and cheap to rule out (common practice, no source). */
    private static final Map<String, Double> COMMON = Map.of("dirty-head", 0.15);

    /** Fewer symptoms tell nothing. */
    private static final int FEWEST = 12;

    /** Copies the lists so that the record cannot change. */
    public Diagnosis {
        faults = List.copyOf(faults);
        sole = List.copyOf(sole);
    }

    /**
     * Weighs faults against each other and against a sound machine.
     *
     * @param codes of the faults that may be there
     * @return empty if the session shows too few symptoms
     */
    public static Optional<Diagnosis> of(
            Signatures signatures,
            Double tapeSpeedMmPerS,
            List<String> codes,
            Map<String, Reading> readings) {
        SymptomLikelihood likelihood =
                new SymptomLikelihood(signatures.soundAt(tapeSpeedMmPerS), readings);
        if (likelihood.symptoms() < FEWEST) {
            return Optional.empty();
        }
        List<Candidate> candidates =
                codes.stream()
                        .flatMap(c -> candidates(c, signatures, likelihood).stream())
                        .toList();
        return Optional.of(weighed(new Ranking(likelihood, candidates)));
    }

    private static List<Candidate> candidates(
            String code, Signatures signatures, SymptomLikelihood likelihood) {
        List<Course> courses = signatures.courses(code);
        int forms = courses.stream().mapToInt(c -> c.hasMirror() ? 2 : 1).sum();
        double share = COMMON.getOrDefault(code, PRIOR);
        double prior = Math.log(share / (1 - share) / forms);
        List<Candidate> candidates = new ArrayList<>();
        for (Course c : courses) {
            candidates.add(candidate(c, false, code, prior, likelihood));
            if (c.hasMirror()) {
                candidates.add(candidate(c, true, code, prior, likelihood));
            }
        }
        return candidates;
    }

    private static Candidate candidate(
            Course course,
            boolean mirrored,
            String code,
            double prior,
            SymptomLikelihood likelihood) {
        Effect[] effects =
                IntStream.range(0, Ranking.SEVERITIES)
                        .mapToObj(
                                k ->
                                        likelihood.effect(
                                                course, mirrored, (k + 0.5) / Ranking.SEVERITIES))
                        .toArray(Effect[]::new);
        return new Candidate(course, mirrored, code, prior, effects);
    }

    private static Diagnosis weighed(Ranking ranking) {
        List<Explanation> all = ranking.explanations();
        double strange = ranking.strange();
        double total =
                Logs.sum(
                        DoubleStream.concat(
                                all.stream().mapToDouble(Explanation::log),
                                DoubleStream.of(strange)));
        List<Explanation> best =
                all.stream()
                        .sorted(Comparator.comparingDouble(Explanation::log).reversed())
                        .toList();
        List<Ranked> ranked =
                best.stream()
                        .flatMap(e -> e.faults().stream().map(Candidate::code))
                        .distinct()
                        .map(code -> ranked(code, best, total))
                        .sorted(Comparator.comparingDouble(Ranked::likelihood).reversed())
                        .toList();
        List<Ranked> sole =
                all.stream()
                        .filter(e -> e.faults().size() == 1)
                        .sorted(Comparator.comparingDouble(Explanation::best).reversed())
                        .map(e -> of(e, 0, Math.exp(e.log() - total)))
                        .toList();
        return new Diagnosis(
                ranked, Math.exp(all.get(0).log() - total), Math.exp(strange - total), sole);
    }

    /** A fault with all explanations that hold it together, in the form of the best of them. */
    private static Ranked ranked(String code, List<Explanation> best, double total) {
        List<Explanation> holding = best.stream().filter(e -> e.holds(code)).toList();
        double likelihood =
                Math.exp(Logs.sum(holding.stream().mapToDouble(Explanation::log)) - total);
        Explanation first = holding.get(0);
        int index =
                IntStream.range(0, first.faults().size())
                        .filter(i -> first.faults().get(i).code().equals(code))
                        .findFirst()
                        .orElseThrow();
        return of(first, index, Math.min(1, likelihood));
    }

    private static Ranked of(Explanation e, int index, double likelihood) {
        Candidate c = e.faults().get(index);
        return new Ranked(
                c.code(),
                c.channel(),
                likelihood,
                c.severity(e.severity()[index]),
                c.course(),
                c.mirrored());
    }
}
