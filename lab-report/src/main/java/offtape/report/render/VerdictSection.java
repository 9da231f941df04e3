package offtape.report.render;

import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.result.Results;
import offtape.report.result.Verdict;

/** What a verdict rests on: figures against limits, and likely causes. */
record VerdictSection(Wording words) {

    /** Whether there is anything to tell. */
    static boolean hasContent(Results results) {
        Verdict verdict = results.verdict();
        return verdict != null && !(verdict.checks().isEmpty() && verdict.faults().isEmpty());
    }

    /** The section. */
    static Section of(Wording words, Results results) {
        return new VerdictSection(words).section(results);
    }

    private Section section(Results results) {
        Verdict verdict = results.verdict();
        Markup body = new Markup();
        if (!verdict.checks().isEmpty()) {
            body.add(checks(verdict).open());
            body.add(Section.paragraph(words, words.say("session.zones")));
        }
        body.add(CausesPart.of(words, verdict.faults()));
        return new Section("verdict", heading(verdict), body);
    }

    private String heading(Verdict verdict) {
        if (verdict.faults().isEmpty()) {
            return words.say("session.limits");
        }
        return words.say(
                verdict.checks().isEmpty() ? "session.causes" : "session.limits-and-causes");
    }

    private DataTable checks(Verdict verdict) {
        return new DataTable(
                words.say("session.checks"),
                List.of(
                        words.say("session.check-quantity"),
                        words.say("session.check-value"),
                        words.say("session.check-limit"),
                        words.say("session.check-outcome"),
                        words.say("session.check-chance"),
                        words.say("session.check-source")),
                verdict.checks().stream().map(this::check).toList());
    }

    private List<String> check(Verdict.Check check) {
        return List.of(
                words.unbroken(told(check.quantity())),
                value(check),
                words.unbroken(told(check.limit())),
                outcome(check.outcome()),
                check.wrongPercent() == null ? DataTable.NOTHING : chance(check.wrongPercent()),
                words.unbroken(told(check.source())));
    }

    private String value(Verdict.Check check) {
        if (check.value() == null) {
            return check.reason() == null
                    ? words.say("session.unknown")
                    : words.say("page.unknown", words.told(check.reason()));
        }
        return check.unit() == null || check.uncertainty() == null
                ? words.significant(check.value(), 4)
                : words.full(
                        Quantity.known(check.value(), check.unit(), check.uncertainty()), false);
    }

    private String chance(double percent) {
        return percent < 0.1
                ? words.say("session.chance-under", Numbers.withUnit(words.decimal(0.1, 1), "%"))
                : Numbers.withUnit(words.decimal(percent, 1), "%");
    }

    /** The outcome with a sign of its own, so that it needs no colour. */
    private String outcome(String outcome) {
        return switch (outcome == null ? "" : outcome) {
            case "pass" -> words.say("session.outcome-pass");
            case "marginal" -> words.say("session.outcome-marginal");
            case "fail" -> words.say("session.outcome-fail");
            default -> words.say("session.outcome-unknown");
        };
    }

    private String told(String text) {
        return text == null ? DataTable.NOTHING : words.told(text);
    }
}
