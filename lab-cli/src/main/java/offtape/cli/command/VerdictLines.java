package offtape.cli.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import offtape.report.fault.Likelihood;
import offtape.report.headline.Subject;
import offtape.report.judge.DecisionWords;
import offtape.report.result.Results;
import offtape.report.result.Verdict;

/** Limits, likely causes, decision and next step as lines for the terminal. */
final class VerdictLines {

    private static final int MOST_CAUSES = 3;

    private VerdictLines() {}

    static List<String> of(Results results) {
        Verdict verdict = results.verdict();
        List<String> lines = new ArrayList<>(limits(verdict.checks()));
        verdict.faults().stream()
                .limit(MOST_CAUSES)
                .forEach(f -> lines.add("Likely cause: " + cause(f)));
        verdict.faults().stream()
                .findFirst()
                .ifPresent(f -> lines.add("About the likeliest: offtape faults " + f.code()));
        if (Subject.of(results) == Subject.MACHINE) {
            lines.addAll(decision(verdict));
        }
        return lines;
    }

    private static List<String> decision(Verdict verdict) {
        List<String> lines = new ArrayList<>();
        lines.add(
                "Decision: "
                        + DecisionWords.of(verdict)
                        + (verdict.reason() == null ? "" : " " + verdict.reason()));
        if (!verdict.next().isEmpty()) {
            lines.add("Next: " + verdict.next().get(0));
        }
        verdict.cautions().forEach(c -> lines.add("Beware: " + c));
        return lines;
    }

    private static String cause(Verdict.Fault fault) {
        String channel = fault.channel() == null ? "" : " (" + fault.channel() + ")";
        return fault.name() + channel + ", " + Likelihood.words(fault.likelihood());
    }

    private static List<String> limits(List<Verdict.Check> checks) {
        List<String> lines = new ArrayList<>();
        for (String outcome : List.of("fail", "marginal", "unknown")) {
            checks.stream()
                    .filter(c -> c.outcome().equals(outcome))
                    .forEach(c -> lines.add("Limit " + outcome + ": " + limit(c)));
        }
        long passed = checks.stream().filter(c -> c.outcome().equals("pass")).count();
        if (!checks.isEmpty()) {
            lines.add(passed + " of " + checks.size() + " limits are met beyond doubt.");
        }
        return lines;
    }

    private static String limit(Verdict.Check check) {
        String value =
                check.value() == null
                        ? check.reason()
                        : String.format(Locale.ROOT, "%.4g %s", check.value(), check.unit());
        return check.quantity() + ", " + value + "; " + check.limit() + " (" + check.source() + ")";
    }
}
