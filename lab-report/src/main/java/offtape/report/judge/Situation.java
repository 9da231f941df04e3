package offtape.report.judge;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import offtape.core.text.Sentences;
import offtape.core.transport.CaptureMode;
import offtape.report.cost.Economics;
import offtape.report.fault.Likelihood;
import offtape.report.result.Verdict;

/**
 * All that a decision rests on.
 *
 * @param mode capture mode, or null if it is not known
 * @param limits name and source of the limits, or null if none were given
 * @param checks what was held against them
 * @param suspects faults that are likely, each once
 * @param soundLikelihood how likely no known fault is there, or null if none could be looked for
 * @param missing key figures that are not known
 * @param voids why nothing in the recording can be trusted, plain sentences
 * @param economics what the owner says of money, or null
 */
record Situation(
        String mode,
        LimitSet limits,
        List<Verdict.Check> checks,
        List<Suspect> suspects,
        Double soundLikelihood,
        List<Gap> missing,
        List<String> voids,
        Economics economics) {

    private static final Sentences SAID = Sentences.near(Situation.class);

    /** Figures of the tape and of the machine that recorded it as much as of this one. */
    private static final Set<Judged> OF_THE_RECORDING =
            Set.of(
                    Judged.LEVEL_AT_3_PERCENT,
                    Judged.WEIGHTED_NOISE_DISTANCE,
                    Judged.NOISE_DISTANCE);

    /** Copies the lists so that the record cannot change. */
    Situation {
        checks = List.copyOf(checks);
        suspects = List.copyOf(suspects);
        missing = List.copyOf(missing);
        voids = List.copyOf(voids);
    }

    /** Checks with an outcome. */
    List<Verdict.Check> checks(String outcome) {
        return checks.stream().filter(c -> c.outcome().equals(outcome)).toList();
    }

    /** Limits that this machine fails, whatever else took part in the recording. */
    List<Verdict.Check> fails() {
        return checks("fail").stream().filter(c -> !isShared(c)).toList();
    }

    /** Limits that this machine, the tape or the one that recorded it fails. */
    List<Verdict.Check> sharedFails() {
        return checks("fail").stream().filter(this::isShared).toList();
    }

    private boolean isShared(Verdict.Check check) {
        return isReplayOnly() && hangsOnTape(check);
    }

    /** Whether a tape alone can be why a limit is failed. */
    static boolean hangsOnTape(Verdict.Check check) {
        return Judged.of(check).map(OF_THE_RECORDING::contains).orElse(false);
    }

    /** Whether this recording shows how the machine replays, and not how it records. */
    boolean isReplayOnly() {
        return CaptureMode.REFERENCE_TAPE.key().equals(mode);
    }

    /** Whether limits were held against anything. */
    boolean isJudged() {
        return !checks.isEmpty();
    }

    /** Whether known faults were looked for. */
    boolean isSearched() {
        return soundLikelihood != null || !suspects.isEmpty();
    }

    /** Failed limits of which no likely fault is the cause. */
    List<Verdict.Check> unexplained() {
        return fails().stream()
                .filter(c -> suspects.stream().noneMatch(s -> s.explains(c)))
                .toList();
    }

    /** Failed limits for which more than what lies outside the machine is to blame. */
    List<Verdict.Check> ownFails() {
        return fails().stream()
                .filter(
                        c -> {
                            List<Suspect> causes =
                                    suspects.stream().filter(s -> s.explains(c)).toList();
                            return causes.isEmpty()
                                    || !causes.stream().allMatch(Suspect::isOutside);
                        })
                .toList();
    }

    /** Likely faults outside the machine. */
    List<Suspect> outside() {
        return suspects.stream().filter(Suspect::isOutside).toList();
    }

    /** Likely faults of the machine that call for something to be done. */
    List<Suspect> inside() {
        return toMend().stream().filter(s -> !s.isOutside()).toList();
    }

    /** Likely faults, in the machine or outside, but those that one lives with. */
    List<Suspect> toMend() {
        return suspects.stream().filter(s -> s.isOutside() || !isLivedWith(s)).toList();
    }

    /** Where limits were given, what cannot be mended is lived with if it fails none of them. */
    private boolean isLivedWith(Suspect suspect) {
        return isJudged()
                && !canMend(suspect)
                && checks("fail").stream().noneMatch(suspect::explains);
    }

    /** Likely faults of the machine that cannot be mended. */
    List<Suspect> beyondRepair() {
        return suspects.stream().filter(s -> !s.isOutside() && !canMend(s)).toList();
    }

    private boolean canMend(Suspect suspect) {
        return economics == null || economics.canMend(suspect.note().code());
    }

    /** Whether a fault alone is ground enough to act. */
    boolean hasDecisiveFault() {
        return inside().stream().anyMatch(s -> s.likelihood() >= Likelihood.DECISIVE);
    }

    /** All that is not known and counts: limits that cannot be told first. */
    List<Gap> gaps() {
        List<Gap> unknown = new ArrayList<>();
        for (Verdict.Check c : checks("unknown")) {
            String why = c.reason() == null ? SAID.say("not-told") : c.reason();
            Judged.of(c).ifPresent(j -> unknown.add(Gap.of(j, mode, c.quantity(), why)));
        }
        Set<Judged> named = unknown.stream().map(Gap::figure).collect(Collectors.toSet());
        return Stream.concat(
                        unknown.stream(), missing.stream().filter(g -> !named.contains(g.figure())))
                .toList();
    }
}
