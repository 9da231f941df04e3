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

/** What two sessions side by side come to: one sentence each. */
final class PairFindings {

    private final Comparison comparison;
    private final PairWords words;

    private PairFindings(Comparison comparison) {
        this.comparison = comparison;
        this.words = PairWords.of(comparison);
    }

    /** Decision, figures, faults, and how far these can be told. */
    static List<String> of(Comparison comparison) {
        return new PairFindings(comparison).sentences();
    }

    private List<String> sentences() {
        List<String> lines = new ArrayList<>();
        if (comparison.decision().differ()) {
            lines.add(words.decisions(comparison.decision()));
        }
        lines.addAll(figures());
        for (Outcome outcome : List.of(Outcome.WENT, Outcome.CAME, Outcome.STAYED)) {
            lines.addAll(faults(outcome));
        }
        lines.addAll(comparison.notes());
        lines.add(scatter());
        return lines;
    }

    private List<String> figures() {
        List<String> lines = new ArrayList<>();
        List<Change> better = comparison.gone(Direction.BETTER);
        List<Change> worse = comparison.gone(Direction.WORSE);
        long known = comparison.changes().stream().filter(Change::isKnown).count();
        if (known == 0) {
            lines.add("No headline figure is known in both sessions.");
        } else if (better.isEmpty() && worse.isEmpty()) {
            lines.add(
                    "None of the "
                            + known
                            + " headline figures known in both sessions "
                            + (words.areMachines() ? "differs" : "changed")
                            + " by more than the uncertainty of the difference.");
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
                        .map(all -> all.size() > 1 ? all.get(0).name() : all.get(0).label())
                        .collect(Collectors.joining("; "));
        String head = Words.sentence(words.better(direction));
        return changes.isEmpty() ? List.of() : List.of(head + ": " + names + ".");
    }

    private List<String> faults(Outcome outcome) {
        List<FaultChange> all =
                comparison.faults().stream().filter(f -> f.outcome() == outcome).toList();
        if (all.isEmpty()) {
            return List.of();
        }
        String names = all.stream().map(FaultChange::label).collect(Collectors.joining("; "));
        String head = words.outcome(all.get(0));
        return List.of(
                (words.areMachines() ? "Faults, " + head : "Faults " + head) + ": " + names + ".");
    }

    private String scatter() {
        return comparison.repeats() < 2
                ? "How much the figures scatter from one measuring to the next is not known: measure "
                        + (words.areMachines() ? "one of them " : "")
                        + "twice with nothing done in between."
                : "How much the figures scatter is taken from "
                        + comparison.repeats()
                        + " measurings with nothing done in between.";
    }
}
