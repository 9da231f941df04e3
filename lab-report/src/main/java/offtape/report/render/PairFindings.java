package offtape.report.render;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import offtape.report.compare.Change;
import offtape.report.compare.Change.Direction;
import offtape.report.compare.Comparison;
import offtape.report.compare.FaultChange;
import offtape.report.compare.FaultChange.Outcome;
import offtape.report.compare.PairWords;

/**
 * What two sessions side by side come to: one sentence each.
 *
 * @param words in the reader's language
 * @param pair what the two are called
 * @param comparison of the two
 */
record PairFindings(Wording words, PairWords pair, Comparison comparison) {

    /** Decision, figures, faults, and how far these can be told. */
    List<String> sentences() {
        List<String> lines = new ArrayList<>();
        if (comparison.decision().differ()) {
            lines.add(pair.decisions(comparison.decision()));
        }
        lines.addAll(figures());
        for (Outcome outcome : List.of(Outcome.WENT, Outcome.CAME, Outcome.STAYED)) {
            lines.addAll(faults(outcome));
        }
        comparison.notes().forEach(note -> lines.add(words.told(note)));
        lines.add(scatter());
        return lines;
    }

    private List<String> figures() {
        List<String> lines = new ArrayList<>();
        List<Change> better = comparison.gone(Direction.BETTER);
        List<Change> worse = comparison.gone(Direction.WORSE);
        long known = comparison.changes().stream().filter(Change::isKnown).count();
        if (known == 0) {
            lines.add(words.say("pair.none-known"));
        } else if (better.isEmpty() && worse.isEmpty()) {
            lines.add(
                    words.say(
                            pair.areMachines() ? "pair.none-differs" : "pair.none-changed", known));
        }
        lines.addAll(named(Direction.BETTER, better));
        lines.addAll(named(Direction.WORSE, worse));
        return lines;
    }

    /** Each figure once; the channel where it is one of them only. */
    private List<String> named(Direction direction, List<Change> changes) {
        Map<String, List<Change>> byName =
                changes.stream()
                        .collect(
                                Collectors.groupingBy(
                                        Change::name, LinkedHashMap::new, Collectors.toList()));
        String names =
                byName.values().stream()
                        .map(
                                all ->
                                        FigureNames.of(
                                                words,
                                                all.get(0).name(),
                                                all.size() > 1 ? null : all.get(0).channel()))
                        .collect(Collectors.joining("; "));
        String head = words.sentence(pair.better(direction));
        return changes.isEmpty()
                ? List.of()
                : List.of(words.say("pair.moved-figures", head, names));
    }

    private List<String> faults(Outcome outcome) {
        List<FaultChange> all =
                comparison.faults().stream().filter(f -> f.outcome() == outcome).toList();
        if (all.isEmpty()) {
            return List.of();
        }
        String names =
                all.stream().map(f -> PairFaults.label(words, f)).collect(Collectors.joining("; "));
        String head = pair.outcome(all.get(0));
        return List.of(
                words.say(
                        pair.areMachines() ? "pair.faults-machines" : "pair.faults-served",
                        head,
                        names));
    }

    private String scatter() {
        if (comparison.repeats() >= 2) {
            return words.say("pair.scatter", comparison.repeats());
        }
        return words.say(
                pair.areMachines() ? "pair.scatter-unknown-machines" : "pair.scatter-unknown");
    }
}
