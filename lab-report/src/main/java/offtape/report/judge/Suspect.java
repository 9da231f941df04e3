package offtape.report.judge;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import offtape.core.text.Sentences;
import offtape.report.fault.FaultNote;
import offtape.report.fault.Likelihood;
import offtape.report.result.Verdict;

/**
 * A fault that may be there, once for all channels that have it.
 *
 * @param note what is known of it
 * @param channels those that have it, empty if it is no matter of one channel
 * @param likelihood of the surest, 0 to 1
 * @param evidence the first thing that speaks for it, or null
 */
record Suspect(FaultNote note, List<String> channels, double likelihood, String evidence) {

    private static final Sentences SAID = Sentences.near(Suspect.class);

    /** Copies the list so that the record cannot change. */
    Suspect {
        channels = List.copyOf(channels);
    }

    /** Faults that are likely, one entry a code, in their order. */
    static List<Suspect> likely(List<Verdict.Fault> faults, Function<String, FaultNote> notes) {
        Map<String, List<Verdict.Fault>> byCode = new LinkedHashMap<>();
        faults.stream()
                .filter(f -> f.likelihood() >= Likelihood.LIKELY)
                .forEach(f -> byCode.computeIfAbsent(f.code(), c -> new ArrayList<>()).add(f));
        return byCode.values().stream().map(f -> of(f, notes)).toList();
    }

    private static Suspect of(List<Verdict.Fault> same, Function<String, FaultNote> notes) {
        Verdict.Fault first = same.get(0);
        return new Suspect(
                notes.apply(first.code()),
                same.stream().map(Verdict.Fault::channel).filter(Objects::nonNull).toList(),
                same.stream().mapToDouble(Verdict.Fault::likelihood).max().orElseThrow(),
                first.evidence().isEmpty() ? null : first.evidence().get(0));
    }

    /** Whether nothing is wrong with the machine itself. */
    boolean isOutside() {
        return note.effort().equals("outside");
    }

    /** Whether it can be why a limit is failed. */
    boolean explains(Verdict.Check check) {
        return Judged.of(check)
                .filter(j -> note.moves().contains(j.key()))
                .map(j -> j == Judged.BALANCE ? tips() : !j.isPerChannel() || isOn(check))
                .orElse(false);
    }

    /** Whether it makes the channels unequal: what both have alike does not. */
    private boolean tips() {
        return note.channels().equals("machine") || channels.size() == 1;
    }

    private boolean isOn(Verdict.Check check) {
        return channels.isEmpty()
                || channels.stream().anyMatch(c -> check.quantity().endsWith(", " + c));
    }

    /** Its name with the channels. */
    String name() {
        return channels.isEmpty()
                ? note.name()
                : SAID.say(channels.size() > 1 ? "on-both" : "on-" + channels.get(0), note.name());
    }
}
