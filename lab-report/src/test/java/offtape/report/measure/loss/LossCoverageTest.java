package offtape.report.measure.loss;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.IntStream;
import offtape.core.standard.TrackSpacing;
import offtape.core.unit.Quantity;
import offtape.report.result.Channels;
import offtape.report.result.LossCause;
import offtape.report.result.LossFit;
import offtape.report.result.Session;
import org.junit.jupiter.api.Test;

/** How often what is told of causes holds on made machines. */
class LossCoverageTest {

    private static final int DRAWS = 240;

    /** A judgement of one cause. */
    private record Outcome(String cause, boolean told, boolean holds, String line) {}

    @Test
    void statedFiguresAndLimitsHold() {
        List<Outcome> all =
                IntStream.range(0, DRAWS)
                        .parallel()
                        .boxed()
                        .flatMap(i -> draw(i).stream())
                        .toList();
        Map<String, int[]> count = new TreeMap<>();
        for (Outcome o : all) {
            int[] c =
                    count.computeIfAbsent(
                            o.cause() + (o.told() ? " told" : " limit"), k -> new int[2]);
            c[0]++;
            c[1] += o.holds() ? 1 : 0;
            c = count.computeIfAbsent(o.told() ? "all told" : "all limits", k -> new int[2]);
            c[0]++;
            c[1] += o.holds() ? 1 : 0;
            if (!o.holds() && System.getenv("LOSS_VERBOSE") != null) {
                System.out.println(o.line());
            }
        }
        count.forEach(
                (k, v) -> System.out.printf(Locale.ROOT, "%-24s %4d of %4d hold%n", k, v[1], v[0]));
        for (String kind : List.of("all told", "all limits")) {
            double share = (double) count.get(kind)[1] / count.get(kind)[0];
            assertTrue(share > 0.90, kind + " " + share);
        }
    }

    private static List<Outcome> draw(int seed) {
        Random random = new Random(7_919L * seed * seed + 31);
        MadeMachine m = MadeMachine.draw(random);
        Session session =
                new Session(
                        null,
                        null,
                        m.speed(),
                        "reference-tape",
                        "",
                        null,
                        "",
                        "",
                        m.known() ? TrackSpacing.named("two-track") : null);
        Channels none = Channels.unknown("no");
        Quantity delay =
                m.known()
                        ? Quantity.known(m.delayUs(random), "µs", 0.1)
                        : Quantity.unknown("One channel.");
        Channels pair =
                new Channels(
                        none.balance(),
                        none.balance(),
                        none.balance(),
                        delay,
                        none.balance(),
                        none.balance(),
                        none.balance(),
                        none.balance(),
                        none.balance(),
                        none.balance(),
                        none.balance(),
                        List.of(),
                        null);
        double noise = 0.01 * Math.pow(10, random.nextDouble());
        LossFit fit =
                new LossMeasure(session, pair, 1e9)
                        .measure(
                                List.of(new MadeCurve(seed, noise).response("left", m::db, 20_000)))
                        .get(0);
        List<Outcome> outcomes = new ArrayList<>();
        for (LossCause c : fit.causes()) {
            double truth = m.truth(c.cause());
            boolean told = c.quantity().isKnown();
            if (c.cause().equals("equalisation") && !told) {
                continue;
            }
            boolean holds =
                    told
                            ? Math.abs(c.quantity().value() - truth) <= c.quantity().uncertainty()
                            : c.moreThan() != null ? truth >= c.moreThan() : truth <= c.lessThan();
            outcomes.add(
                    new Outcome(
                            c.cause(),
                            told,
                            holds,
                            String.format(
                                    Locale.ROOT,
                                    "%d noise %.3f %s %s truth %.3f: %s | %s",
                                    seed,
                                    noise,
                                    m,
                                    c.cause(),
                                    truth,
                                    told ? c.quantity() : c.lessThan() + " / " + c.moreThan(),
                                    fit.alternatives())));
        }
        return outcomes;
    }
}
