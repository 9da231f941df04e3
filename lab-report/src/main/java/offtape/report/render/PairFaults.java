package offtape.report.render;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import offtape.report.compare.Comparison;
import offtape.report.compare.FaultChange;
import offtape.report.compare.FaultChange.Outcome;
import offtape.report.compare.PairWords;
import offtape.report.fault.Likelihood;

/** Which faults went, stayed and came, or which of two machines has which. */
final class PairFaults {

    private PairFaults() {}

    /** The section. */
    static Section of(Comparison comparison) {
        PairWords words = PairWords.of(comparison);
        Markup body = new Markup();
        if (comparison.faults().isEmpty()) {
            body.add(Section.paragraph(words.noFaults(comparison.decision())));
        } else {
            body.add(table(comparison, words.brief(PairPage.MOST_LETTERS)).open());
            reasons(comparison).forEach(r -> body.add(Section.paragraph(r)));
            body.add(Section.paragraph(rule(words)));
        }
        return new Section("faults", "Likely faults", body);
    }

    private static DataTable table(Comparison comparison, PairWords words) {
        return new DataTable(
                "Faults in both sessions",
                List.of(
                        "Fault",
                        words.first(),
                        words.second(),
                        words.areMachines() ? "Which has it" : "What became of it"),
                comparison.faults().stream()
                        .map(
                                f ->
                                        List.of(
                                                f.label(),
                                                PairWords.likelihood(f, f.before()),
                                                PairWords.likelihood(f, f.after()),
                                                sign(f.outcome(), words)
                                                        + "\u00a0"
                                                        + words.outcome(f)))
                        .toList());
    }

    /** A sign of its own for what is sure, what is not and what is not known, without colour. */
    private static String sign(Outcome outcome, PairWords words) {
        return switch (outcome) {
            case WENT -> words.areMachines() ? "◄" : "○";
            case CAME -> words.areMachines() ? "►" : "●";
            case STAYED -> "●";
            case MAY_HAVE_GONE, MAY_HAVE_COME, MAY_HAVE_STAYED -> "≈";
            case CANNOT_BE_TOLD -> "?";
        };
    }

    /** Each reason once, with the faults that it holds for. */
    private static List<String> reasons(Comparison comparison) {
        Map<String, List<String>> byReason =
                comparison.faults().stream()
                        .filter(f -> f.reason() != null)
                        .collect(
                                Collectors.groupingBy(
                                        FaultChange::reason,
                                        LinkedHashMap::new,
                                        Collectors.mapping(
                                                FaultChange::label, Collectors.toList())));
        return byReason.entrySet().stream()
                .map(e -> String.join("; ", e.getValue()) + ": " + e.getKey())
                .toList();
    }

    private static String rule(PairWords words) {
        String likely = Likelihood.percent(Likelihood.LIKELY);
        String told = Likelihood.percent(Likelihood.TOLD);
        return "A fault counts as there from "
                + likely
                + " on and as not there under "
                + told
                + "; in between that is not sure"
                + (words.areMachines() ? "." : ", nor what became of it.")
                + " The same fault on the other channel is another fault.";
    }
}
