package offtape.report.render;

import java.util.List;
import offtape.report.result.Results;
import offtape.report.result.Verdict;

/** What to do with the machine, where that was decided. */
final class VerdictSection {

    private VerdictSection() {}

    /** Whether there is anything to tell. */
    static boolean hasContent(Results results) {
        Verdict verdict = results.verdict();
        return verdict != null
                && (verdict.decision() != null
                        || !verdict.checks().isEmpty()
                        || !verdict.faults().isEmpty());
    }

    /** The section. */
    static Section of(Results results) {
        Verdict verdict = results.verdict();
        Markup body = new Markup();
        if (verdict.decision() != null) {
            body.add(Section.paragraph(decision(verdict.decision())));
        }
        if (!verdict.because().isEmpty()) {
            body.open("ul");
            verdict.because().forEach(ground -> body.element("li", ground));
            body.close("ul").line();
        }
        if (!verdict.checks().isEmpty()) {
            body.add(checks(verdict).open());
        }
        verdict.faults().forEach(fault -> body.add(fault(fault)));
        return new Section("verdict", "Verdict", body);
    }

    private static String decision(String decision) {
        return switch (decision) {
            case "keep" -> "Keep it.";
            case "service" -> "Have it serviced.";
            case "let-go" -> "Let it go.";
            default -> decision;
        };
    }

    private static DataTable checks(Verdict verdict) {
        return new DataTable(
                "Figures against their limits",
                List.of("Quantity", "Value", "Limit", "Outcome", "Source of the limit"),
                verdict.checks().stream().map(VerdictSection::check).toList());
    }

    private static List<String> check(Verdict.Check check) {
        return List.of(
                text(check.quantity()),
                check.value() == null ? "unknown" : Numbers.significant(check.value(), 4),
                text(check.limit()),
                outcome(check.outcome()),
                text(check.source()));
    }

    /** The outcome with a sign of its own, so that it needs no colour. */
    private static String outcome(String outcome) {
        return switch (text(outcome)) {
            case "pass" -> "✓ pass";
            case "marginal" -> "≈ marginal";
            case "fail" -> "✕ fail";
            default -> "? unknown";
        };
    }

    private static Markup fault(Verdict.Fault fault) {
        Markup out =
                new Markup()
                        .element("h3", "Likely cause: " + text(fault.code()))
                        .element(
                                "p",
                                "Likelihood "
                                        + Numbers.decimal(100 * fault.likelihood(), 0)
                                        + " %. First thing to try: "
                                        + text(fault.remedy()));
        if (Words.isGiven(fault.caution())) {
            out.element("p", "▲ Caution: " + fault.caution());
        }
        if (fault.evidence() != null && !fault.evidence().isEmpty()) {
            out.open("ul");
            fault.evidence().forEach(line -> out.element("li", line));
            out.close("ul");
        }
        return out.line();
    }

    private static String text(String text) {
        return text == null ? DataTable.NOTHING : text;
    }
}
