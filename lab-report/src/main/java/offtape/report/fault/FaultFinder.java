package offtape.report.fault;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import offtape.report.fault.rank.Diagnosis;
import offtape.report.fault.rank.Ranked;
import offtape.report.fault.rank.Signatures;
import offtape.report.fault.symptom.Reading;
import offtape.report.fault.symptom.Symptoms;
import offtape.report.result.Results;
import offtape.report.result.Verdict;

/**
 * Looks for what is wrong with a machine: reads the symptoms of a session and asks which faults
 * explain them best, a sound machine being one of the answers.
 */
public final class FaultFinder {

    /** Causes from this likelihood on are taken as there when another one is told from others. */
    private static final double THERE = 0.5;

    private FaultFinder() {}

    /** Likely causes of what a session shows. */
    public static FaultFinding find(Results results) {
        Signatures signatures = Signatures.load();
        Map<String, Reading> readings = Symptoms.of(results);
        Double speed = results.session().tapeSpeedMmPerS();
        Optional<Diagnosis> diagnosis =
                Diagnosis.of(
                        signatures,
                        speed,
                        FaultCatalogue.codesOf(results.session().mode()),
                        readings);
        return diagnosis
                .map(d -> finding(d, new Evidence(signatures.soundAt(speed), readings)))
                .orElse(FaultFinding.NONE);
    }

    private static FaultFinding finding(Diagnosis diagnosis, Evidence evidence) {
        List<Ranked> there =
                diagnosis.faults().stream().filter(f -> f.likelihood() >= THERE).toList();
        return new FaultFinding(
                diagnosis.faults().stream()
                        .filter(f -> f.likelihood() >= Likelihood.TOLD)
                        .map(f -> told(f, there, diagnosis, evidence))
                        .toList(),
                diagnosis.sound());
    }

    private static Verdict.Fault told(
            Ranked fault, List<Ranked> there, Diagnosis diagnosis, Evidence evidence) {
        FaultNote note = FaultCatalogue.of(fault.code());
        List<Ranked> beside = there.stream().filter(f -> !f.code().equals(fault.code())).toList();
        return new Verdict.Fault(
                note.code(),
                note.name(),
                fault.channel(),
                fault.likelihood(),
                evidence.of(fault),
                new LookAlikes(evidence, diagnosis.sole()).of(note, fault, beside),
                note.first(),
                note.cautions().isEmpty()
                        ? null
                        : String.join(
                                " ",
                                note.cautions().stream().map(c -> Caution.of(c).words()).toList()));
    }
}
