package offtape.report.result;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.Sentences;
import offtape.report.result.LadderSession.Ladder;
import offtape.report.result.LadderSession.Step;

/**
 * Where K3 reaches a value, by the ladders nearest to 1 kHz. Between two steps the logarithm of K3
 * is taken to rise evenly with level, as it does on tape.
 *
 * @param place where the ladders are from, for messages
 * @param ladders all that there are
 */
record K3Level(String place, List<Ladder> ladders) {

    private static final Sentences SAID = Sentences.near(K3Level.class);

    private static final double USUAL_HZ = 1000;

    /** The record level on the channel that reaches it first, dB re reference. */
    double at(double k3Percent) {
        double hz =
                ladders.stream()
                        .filter(l -> !l.told().isEmpty())
                        .mapToDouble(Ladder::frequencyHz)
                        .boxed()
                        .min(Comparator.comparingDouble(f -> Math.abs(Math.log(f / USUAL_HZ))))
                        .orElseThrow(() -> new UnusableInputException(SAID.say("no-k3", place)));
        return ladders.stream()
                .filter(l -> l.frequencyHz() == hz)
                .map(l -> crossing(l.told(), k3Percent))
                .filter(Objects::nonNull)
                .min(Comparator.naturalOrder())
                .orElseThrow(() -> outside(hz, k3Percent));
    }

    /** Where the steps first pass the value on the way up, or null. */
    private static Double crossing(List<Step> steps, double k3Percent) {
        for (int i = 1; i < steps.size(); i++) {
            Step low = steps.get(i - 1);
            Step high = steps.get(i);
            if (low.k3Percent() <= k3Percent && high.k3Percent() >= k3Percent) {
                double share =
                        high.k3Percent().equals(low.k3Percent())
                                ? 0
                                : Math.log(k3Percent / low.k3Percent())
                                        / Math.log(high.k3Percent() / low.k3Percent());
                return low.recordLevelDb() + share * (high.recordLevelDb() - low.recordLevelDb());
            }
        }
        return null;
    }

    private UnusableInputException outside(double hz, double k3Percent) {
        List<Double> all =
                ladders.stream()
                        .filter(l -> l.frequencyHz() == hz)
                        .flatMap(l -> l.told().stream())
                        .map(Step::k3Percent)
                        .sorted()
                        .toList();
        return new UnusableInputException(
                SAID.say(
                        "k3-outside",
                        hz,
                        place,
                        percent(all.get(0)),
                        percent(all.get(all.size() - 1)),
                        percent(k3Percent)));
    }

    private static String percent(double value) {
        return String.format(Locale.ROOT, "%.3g", value);
    }
}
