package offtape.report.judge;

import java.util.List;
import java.util.Set;
import offtape.report.cost.Economics;
import offtape.report.fault.FaultCatalogue;
import offtape.report.fault.FaultFinder;
import offtape.report.fault.FaultFinding;
import offtape.report.headline.Subject;
import offtape.report.result.HealthNote;
import offtape.report.result.Results;
import offtape.report.result.Verdict;

/** Decides what to do with a machine: keep it, have it serviced, or let it go. */
public final class Decider {

    private static final String BLOCKING = "blocking";

    /** A dead channel may be the machine's own; what it hides is missed as missing figures. */
    private static final Set<String> OF_THE_MACHINE = Set.of("dead-channel");

    private Decider() {}

    /**
     * The same results with faults looked for, limits checked, and what to do decided. An interface
     * is held against limits only: nobody services one.
     *
     * @param limits what figures are held against, or null
     * @param economics what the owner says of money, or null
     */
    public static Results decided(Results results, LimitSet limits, Economics economics) {
        if (Subject.of(results) == Subject.INTERFACE) {
            return limits == null ? results : Judge.judged(results, limits);
        }
        return decided(results, limits, economics, FaultFinder.find(results));
    }

    /** The same for a machine whose faults were looked for already. */
    public static Results decided(
            Results results, LimitSet limits, Economics economics, FaultFinding finding) {
        Situation situation =
                new Situation(
                        results.session().mode(),
                        limits,
                        limits == null ? List.of() : Judge.checks(results, limits),
                        Suspect.likely(finding.faults(), FaultCatalogue::of),
                        finding.soundLikelihood(),
                        KeyFigures.missing(results),
                        voids(results),
                        economics);
        Verdict verdict = Decision.of(situation, finding.faults());
        return results.withVerdict(verdict);
    }

    private static List<String> voids(Results results) {
        return results.health().stream()
                .filter(h -> BLOCKING.equals(h.severity()) && !OF_THE_MACHINE.contains(h.code()))
                .map(HealthNote::message)
                .toList();
    }
}
