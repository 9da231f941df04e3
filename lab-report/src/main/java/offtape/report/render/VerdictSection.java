package offtape.report.render;

import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.result.Results;
import offtape.report.result.Verdict;

/** What to do with the machine, where that was decided. */
final class VerdictSection {

    private static final String ZONES =
            "A limit is passed or failed only by more than the uncertainty of the figure, and"
                    + " marginal in between (ISO 14253-1); the chance of being wrong is that of the"
                    + " true value on the other side of the limit (JCGM 106).";

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
        if (verdict.decision() == null && verdict.reason() != null) {
            body.add(Section.paragraph(verdict.reason()));
        }
        if (!verdict.because().isEmpty()) {
            body.open("ul");
            verdict.because().forEach(ground -> body.element("li", ground));
            body.close("ul").line();
        }
        if (!verdict.checks().isEmpty()) {
            body.add(checks(verdict).open());
            body.add(Section.paragraph(ZONES));
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
                List.of("Quantity", "Value", "Limit", "Outcome", "Chance of being wrong", "Source"),
                verdict.checks().stream().map(VerdictSection::check).toList());
    }

    private static List<String> check(Verdict.Check check) {
        return List.of(
                text(check.quantity()),
                value(check),
                text(check.limit()),
                outcome(check.outcome()),
                check.wrongPercent() == null ? DataTable.NOTHING : chance(check.wrongPercent()),
                text(check.source()));
    }

    private static String value(Verdict.Check check) {
        if (check.value() == null) {
            return check.reason() == null ? "unknown" : "unknown: " + check.reason();
        }
        return check.unit() == null || check.uncertainty() == null
                ? Numbers.significant(check.value(), 4)
                : Numbers.full(
                        Quantity.known(check.value(), check.unit(), check.uncertainty()), false);
    }

    private static String chance(double percent) {
        return percent < 0.1 ? "under 0.1 %" : Numbers.decimal(percent, 1) + " %";
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
