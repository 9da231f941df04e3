package offtape.report.render;

import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.result.Results;
import offtape.report.result.Verdict;

/** What a verdict rests on: figures against limits, and likely causes. */
final class VerdictSection {

    private static final String ZONES =
            "A limit is passed or failed only by more than the uncertainty of the figure, and"
                    + " marginal in between (ISO 14253-1); the chance of being wrong is that of the"
                    + " true value on the other side of the limit (JCGM 106).";

    private VerdictSection() {}

    /** Whether there is anything to tell. */
    static boolean hasContent(Results results) {
        Verdict verdict = results.verdict();
        return verdict != null && !(verdict.checks().isEmpty() && verdict.faults().isEmpty());
    }

    /** The section. */
    static Section of(Results results) {
        Verdict verdict = results.verdict();
        Markup body = new Markup();
        if (!verdict.checks().isEmpty()) {
            body.add(checks(verdict).open());
            body.add(Section.paragraph(ZONES));
        }
        body.add(CausesPart.of(verdict.faults()));
        return new Section("verdict", heading(verdict), body);
    }

    private static String heading(Verdict verdict) {
        if (verdict.faults().isEmpty()) {
            return "Limits";
        }
        return verdict.checks().isEmpty() ? "Likely causes" : "Limits and likely causes";
    }

    private static DataTable checks(Verdict verdict) {
        return new DataTable(
                "Figures against their limits",
                List.of("Quantity", "Value", "Limit", "Outcome", "Chance of being wrong", "Source"),
                verdict.checks().stream().map(VerdictSection::check).toList());
    }

    private static List<String> check(Verdict.Check check) {
        return List.of(
                Words.unbroken(text(check.quantity())),
                value(check),
                Words.unbroken(text(check.limit())),
                outcome(check.outcome()),
                check.wrongPercent() == null ? DataTable.NOTHING : chance(check.wrongPercent()),
                Words.unbroken(text(check.source())));
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
        return percent < 0.1
                ? "under " + Numbers.withUnit("0.1", "%")
                : Numbers.withUnit(Numbers.decimal(percent, 1), "%");
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

    private static String text(String text) {
        return text == null ? DataTable.NOTHING : text;
    }
}
