package offtape.report.render;

import java.util.List;
import offtape.report.result.Results;
import offtape.report.result.Session;
import offtape.report.result.Verdict;

/** Sessions with verdicts made by hand, to be set against each other. */
final class Pairs {

    private Pairs() {}

    /** A likely cause. */
    static Verdict.Fault fault(String code, String channel, double likelihood) {
        return new Verdict.Fault(
                code, "Fault " + code, channel, likelihood, List.of(), List.of(), "Try.", null);
    }

    /** A session of a machine with hiss of some likelihood, or without if that is null. */
    static Results named(String machine, Double hiss) {
        return session(
                machine,
                "two-pass",
                verdict(null, 0.1, hiss == null ? List.of() : List.of(fault("hiss", null, hiss))));
    }

    /** A session of a mode with faults. */
    static Results with(String mode, Double sound, Verdict.Fault... faults) {
        return session("A", mode, verdict(null, sound, List.of(faults)));
    }

    /** A verdict with a decision and faults. */
    static Verdict verdict(String decision, Double sound, List<Verdict.Fault> faults) {
        return new Verdict(
                decision,
                decision == null ? "No limits were applied." : null,
                List.of(),
                List.of(),
                faults,
                sound,
                List.of(),
                List.of());
    }

    private static Results session(String machine, String mode, Verdict verdict) {
        return Scenario.with(
                        new Session(machine, null, null, mode, "", null, null, null),
                        null,
                        null,
                        List.of(),
                        List.of(),
                        List.of(),
                        null,
                        List.of())
                .withVerdict(verdict);
    }

    /** The invented machine in need of care under a name, with faults. */
    static Results worn(String name) {
        return Scenario.session(whole(name, "3f0c", "2026-03-14T18:20:00Z"), 0)
                .withVerdict(
                        verdict(
                                "service",
                                0.01,
                                List.of(
                                        fault("dirty-head", "right", 0.87),
                                        fault("capstan", null, 0.62),
                                        fault("ground-loop", null, 0.3))));
    }

    /** The invented machine in order under a name, with a fault that it shares. */
    static Results fine(String name) {
        return Scenario.session(whole(name, "a81e", "2026-03-28T10:05:00Z"), 1)
                .withVerdict(verdict("keep", 0.4, List.of(fault("capstan", null, 0.55))));
    }

    private static Session whole(String name, String digest, String madeAt) {
        return new Session(
                name,
                "a roll of long-play tape",
                190.5,
                "off-tape",
                madeAt,
                null,
                "Offtape 0.1.0",
                digest.repeat(16));
    }
}
