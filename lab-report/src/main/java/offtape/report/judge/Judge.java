package offtape.report.judge;

import java.util.ArrayList;
import java.util.List;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.headline.Find;
import offtape.report.result.Results;
import offtape.report.result.Verdict;

/** Holds results against a set of limits. */
public final class Judge {

    private static final Sentences SAID = Sentences.near(Judge.class);

    private final Results results;
    private final LimitSet set;

    private Judge(Results results, LimitSet set) {
        this.results = results;
        this.set = set;
    }

    /** The same results with each limit that counts at their tape speed checked. */
    public static Results judged(Results results, LimitSet set) {
        List<Verdict.Check> checks = checks(results, set);
        Verdict verdict = results.verdict();
        return results.withVerdict(
                new Verdict(
                        verdict.decision(),
                        SAID.say("limits-only", set.name()),
                        List.of(SAID.say("limits-source", set.name(), set.source())),
                        checks,
                        verdict.faults(),
                        verdict.soundLikelihood(),
                        verdict.next(),
                        verdict.cautions()));
    }

    /** Each limit that counts at the tape speed of the results, checked. */
    static List<Verdict.Check> checks(Results results, LimitSet set) {
        return new Judge(results, set).checks();
    }

    /** Whether a limit is failed beyond doubt. */
    public static boolean isFailed(Results results) {
        return results.verdict().checks().stream()
                .anyMatch(c -> c.outcome().equals(Outcome.Kind.FAIL.word()));
    }

    private List<Verdict.Check> checks() {
        List<Verdict.Check> checks = new ArrayList<>();
        for (Limit limit : set.limits()) {
            if (limit.countsAt(results.session().tapeSpeedMmPerS())) {
                List<String> channels = limit.judged().isPerChannel() ? Find.CHANNELS : List.of("");
                channels.forEach(c -> checks.add(check(limit, c)));
            }
        }
        return checks;
    }

    private Verdict.Check check(Limit limit, String channel) {
        if (limit.judged() == Judged.RESPONSE) {
            return Find.quietResponse(results, channel)
                    .flatMap(r -> Mask.of(r, limit))
                    .map(m -> check(limit, channel, m.value(), m.uncertainty(), m.outcome()))
                    .orElseGet(() -> unknown(limit, channel, SAID.say("band-not-reached")));
        }
        Quantity figure = limit.judged().of(results, channel);
        if (!figure.isKnown()) {
            return unknown(limit, channel, figure.reason());
        }
        double value = figure.value();
        double over = limit.most() == null ? Double.MAX_VALUE : limit.most() - value;
        double under = limit.least() == null ? Double.MAX_VALUE : value - limit.least();
        Outcome outcome = Outcome.of(Math.min(over, under), figure.uncertainty());
        return check(limit, channel, value, figure.uncertainty(), outcome);
    }

    private Verdict.Check check(
            Limit limit, String channel, double value, double uncertainty, Outcome outcome) {
        return new Verdict.Check(
                name(limit, channel),
                value,
                limit.words(),
                outcome.kind().word(),
                source(limit),
                limit.judged().unit(),
                uncertainty,
                outcome.wrongPercent(),
                null);
    }

    private Verdict.Check unknown(Limit limit, String channel, String reason) {
        return new Verdict.Check(
                name(limit, channel),
                null,
                limit.words(),
                "unknown",
                source(limit),
                limit.judged().unit(),
                null,
                null,
                reason);
    }

    private static String name(Limit limit, String channel) {
        return limit.judged().words() + (channel.isEmpty() ? "" : ", " + channel);
    }

    private String source(Limit limit) {
        return set.name() + (limit.clause() == null ? "" : ", " + limit.clause());
    }
}
