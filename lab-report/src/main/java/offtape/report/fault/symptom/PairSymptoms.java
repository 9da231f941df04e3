package offtape.report.fault.symptom;

import java.util.List;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.headline.Find;
import offtape.report.result.Channels;
import offtape.report.result.Results;

/** What the two channels show against each other, and what the recording itself shows. */
final class PairSymptoms {

    private static final Sentences SAID = Sentences.near(PairSymptoms.class);

    private static final Symptom BALANCE =
            Symptom.decibels("balance", SAID.say("balance"), true, 0.3);
    private static final Symptom DELAY =
            new Symptom(
                    "delay-difference",
                    SAID.say("delay-difference"),
                    "µs",
                    Scale.SIGNED_WIDE,
                    Joining.SUM,
                    true,
                    0.1);
    private static final Symptom WANDER =
            Symptom.size("path-wander", SAID.say("path-wander"), "µm", 0.15);
    private static final Symptom LEAK = Symptom.level("crosstalk", SAID.say("crosstalk"), 2);
    private static final Symptom INVERTED = Symptom.sign("inverted", SAID.say("inverted"), false);
    private static final Symptom SWAPPED = Symptom.sign("swapped", SAID.say("swapped"), false);
    private static final Symptom CLIPPED = Symptom.sign("clipped", SAID.say("clipped"), false);
    private static final Symptom DEAD = Symptom.sign("dead", SAID.say("dead"), true);

    /** All of them. */
    static final List<Symptom> ALL =
            List.of(BALANCE, DELAY, WANDER, LEAK, INVERTED, SWAPPED, CLIPPED, DEAD);

    private static final double LEAST_WANDER_UM = 0.01;

    private PairSymptoms() {}

    static void read(Results results, Symptoms to) {
        Channels channels = Find.channels(results);
        to.put(BALANCE, channels.balance());
        new Pair(known(channels.crosstalkLeftToRight()), known(channels.crosstalkRightToLeft()))
                .putLarger(to, LEAK);
        to.put(DELAY, channels.interchannelDelay());
        Double speed = results.session().tapeSpeedMmPerS();
        Quantity wander = channels.interchannelDelayWander();
        if (speed != null && wander != null && wander.isKnown()) {
            double perUs = speed / 1000;
            double um = Math.max(LEAST_WANDER_UM, wander.value() * perUs);
            to.put(WANDER, um, Math.min(um, wander.uncertainty() / 2 * perUs));
        }
        if (Find.CHANNELS.stream().allMatch(c -> Find.noise(results, c).isPresent())) {
            to.put(INVERTED, has(results, "opposite-channels"), 0);
            to.put(SWAPPED, has(results, "swapped-channels"), 0);
            to.put(DEAD, dead(results), 0);
        }
        to.put(CLIPPED, has(results, "clipping"), 0);
    }

    private static Quantity known(Quantity figure) {
        return figure != null && figure.isKnown() ? figure : null;
    }

    private static double has(Results results, String code) {
        return results.health().stream().anyMatch(n -> code.equals(n.code())) ? 1 : 0;
    }

    /** A dead channel has no response, though the other one has. */
    private static double dead(Results results) {
        if (has(results, "dead-channel") == 0) {
            return 0;
        }
        return Find.quietResponse(results, "right").isPresent() ? -1 : 1;
    }
}
