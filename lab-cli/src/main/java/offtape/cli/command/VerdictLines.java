package offtape.cli.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import offtape.report.fault.Likelihood;
import offtape.report.headline.Subject;
import offtape.report.judge.DecisionWords;
import offtape.report.result.Results;
import offtape.report.result.Verdict;

/**
 * Limits, likely causes, decision and next step as lines for the terminal.
 *
 * @param speech speaks of sessions
 */
record VerdictLines(Speech speech) {

    private static final int MOST_CAUSES = 3;

    List<String> of(Results results) {
        Verdict verdict = results.verdict();
        List<String> lines = new ArrayList<>(limits(verdict.checks()));
        verdict.faults().stream()
                .limit(MOST_CAUSES)
                .forEach(f -> lines.add(speech.say("session.cause", cause(f))));
        verdict.faults().stream()
                .findFirst()
                .ifPresent(f -> lines.add(speech.say("session.about", f.code())));
        if (Subject.of(results) == Subject.MACHINE) {
            lines.addAll(decision(verdict));
        }
        return lines;
    }

    private List<String> decision(Verdict verdict) {
        List<String> lines = new ArrayList<>();
        lines.add(
                speech.say("session.decision", speech.told(DecisionWords.of(verdict)))
                        + (verdict.reason() == null ? "" : " " + speech.told(verdict.reason())));
        if (!verdict.next().isEmpty()) {
            lines.add(speech.say("session.next", speech.told(verdict.next().get(0))));
        }
        verdict.cautions().forEach(c -> lines.add(speech.say("session.beware", speech.told(c))));
        return lines;
    }

    private String cause(Verdict.Fault fault) {
        String name = speech.told(fault.name());
        String likelihood = speech.told(Likelihood.words(fault.likelihood()));
        return fault.channel() == null
                ? speech.say("session.fault", name, likelihood)
                : speech.say(
                        "session.fault-channel", name, speech.told(fault.channel()), likelihood);
    }

    private List<String> limits(List<Verdict.Check> checks) {
        List<String> lines = new ArrayList<>();
        for (String outcome : List.of("fail", "marginal", "unknown")) {
            checks.stream()
                    .filter(c -> c.outcome().equals(outcome))
                    .forEach(c -> lines.add(speech.say("session.limit-" + outcome, limit(c))));
        }
        long passed = checks.stream().filter(c -> c.outcome().equals("pass")).count();
        if (!checks.isEmpty()) {
            lines.add(speech.say("session.met", passed, checks.size()));
        }
        return lines;
    }

    private String limit(Verdict.Check check) {
        String value =
                check.value() == null
                        ? speech.told(check.reason())
                        : speech.plain(
                                String.format(Locale.ROOT, "%.4g %s", check.value(), check.unit()));
        return speech.say(
                "session.limit",
                speech.told(check.quantity()),
                value,
                speech.told(check.limit()),
                speech.told(check.source()));
    }
}
