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

/**
 * Which faults went, stayed and came, or which of two machines has which.
 *
 * @param words in the reader's language
 * @param pair what the two are called
 */
record PairFaults(Wording words, PairWords pair) {

    /** The section. */
    Section of(Comparison comparison) {
        Markup body = new Markup();
        if (comparison.faults().isEmpty()) {
            body.add(Section.paragraph(words, pair.noFaults(comparison.decision())));
        } else {
            body.add(table(comparison, pair.brief(PairPage.MOST_LETTERS)).open());
            reasons(comparison).forEach(r -> body.add(Section.paragraph(words, r)));
            body.add(Section.paragraph(words, rule()));
        }
        return new Section("faults", words.say("pair.faults"), body);
    }

    /** Its name and channel. */
    static String label(Wording words, FaultChange fault) {
        String name = words.told(fault.name());
        return fault.channel() == null
                ? name
                : words.say("pair.fault-of-channel", name, words.channel(fault.channel()));
    }

    private DataTable table(Comparison comparison, PairWords brief) {
        return new DataTable(
                words.say("pair.faults-table"),
                List.of(
                        words.say("pair.column-fault"),
                        brief.first(),
                        brief.second(),
                        words.say(
                                pair.areMachines() ? "pair.column-owner" : "pair.column-outcome")),
                comparison.faults().stream()
                        .map(
                                f ->
                                        List.of(
                                                label(words, f),
                                                brief.likelihood(f, f.before()),
                                                brief.likelihood(f, f.after()),
                                                sign(f.outcome()) + "\u00a0" + brief.outcome(f)))
                        .toList());
    }

    /** A sign of its own for what is sure, what is not and what is not known, without colour. */
    private String sign(Outcome outcome) {
        return switch (outcome) {
            case WENT -> pair.areMachines() ? "◄" : "○";
            case CAME -> pair.areMachines() ? "►" : "●";
            case STAYED -> "●";
            case MAY_HAVE_GONE, MAY_HAVE_COME, MAY_HAVE_STAYED -> "≈";
            case CANNOT_BE_TOLD -> "?";
        };
    }

    /** Each reason once, with the faults that it holds for. */
    private List<String> reasons(Comparison comparison) {
        Map<String, List<String>> byReason =
                comparison.faults().stream()
                        .filter(f -> f.reason() != null)
                        .collect(
                                Collectors.groupingBy(
                                        FaultChange::reason,
                                        LinkedHashMap::new,
                                        Collectors.mapping(
                                                f -> label(words, f), Collectors.toList())));
        return byReason.entrySet().stream()
                .map(
                        e ->
                                words.say(
                                        "pair.faults-reason",
                                        String.join("; ", e.getValue()),
                                        words.told(e.getKey())))
                .toList();
    }

    private String rule() {
        return words.say(
                pair.areMachines() ? "pair.rule-machines" : "pair.rule-served",
                Likelihood.percent(Likelihood.LIKELY),
                Likelihood.percent(Likelihood.TOLD));
    }
}
