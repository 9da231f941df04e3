package offtape.report.measure;

import java.util.ArrayList;
import java.util.List;
import offtape.core.text.Sentences;
import offtape.report.result.HealthNote;

/**
 * Holds the channels against each other from beginning to end: what one frequency shows of delay
 * and balance must be the same whenever it sounds.
 */
final class PairCheck {

    private static final Sentences SAID = Sentences.near(PairCheck.class);

    private static final double SAME_HZ = 0.1;
    private static final double SAME_LEVEL_DB = 0.1;

    /** Standard deviations that are no chance. */
    private static final double BEYOND_CHANCE = 4;

    /** Room for filters and for what saturates unlike, beside noise and wander. */
    private static final double OWN_US = 0.3;

    private static final double OWN_DB = 0.3;

    private final List<PairReading> readings;
    private final double wanderUs;

    /**
     * @param readings of tones at different times
     * @param wanderUs how far the delay between the channels wanders, rms
     */
    PairCheck(List<PairReading> readings, double wanderUs) {
        this.readings = readings;
        this.wanderUs = wanderUs;
    }

    /**
     * A change between two readings.
     *
     * @param change µs or dB
     * @param allowed how much is no warning
     */
    private record Change(PairReading first, PairReading second, double change, double allowed) {

        double excess() {
            return Math.abs(change) / allowed;
        }
    }

    /** A warning for the worst change of delay and of balance, if they are no chance. */
    List<HealthNote> notes() {
        List<HealthNote> notes = new ArrayList<>();
        Change delay = null;
        Change balance = null;
        for (int i = 0; i < readings.size(); i++) {
            for (int j = i + 1; j < readings.size(); j++) {
                PairReading a = readings.get(i);
                PairReading b = readings.get(j);
                if (Math.abs(a.hz() - b.hz()) < SAME_HZ) {
                    delay = worse(delay, delay(a, b));
                    boolean alike = Math.abs(a.levelDb() - b.levelDb()) < SAME_LEVEL_DB;
                    balance = alike ? worse(balance, balance(a, b)) : balance;
                }
            }
        }
        if (delay != null && delay.excess() > 1) {
            notes.add(warning("channels-shift", delay));
        }
        if (balance != null && balance.excess() > 1) {
            notes.add(warning("balance-changes", balance));
        }
        return notes;
    }

    private static Change worse(Change known, Change other) {
        return known == null || other.excess() > known.excess() ? other : known;
    }

    private Change delay(PairReading a, PairReading b) {
        double chance = Math.hypot(Math.hypot(a.sigmaUs(), b.sigmaUs()), Math.sqrt(2) * wanderUs);
        return new Change(a, b, b.laterUs(a), OWN_US + BEYOND_CHANCE * chance);
    }

    private static Change balance(PairReading a, PairReading b) {
        double chance = 8.686 * Math.hypot(a.share(), b.share());
        return new Change(
                a, b, b.rightOverLeftDb() - a.rightOverLeftDb(), OWN_DB + BEYOND_CHANCE * chance);
    }

    private static HealthNote warning(String code, Change c) {
        return new HealthNote(
                "warning",
                code,
                SAID.say(
                        code,
                        c.first().hz(),
                        c.change(),
                        c.first().atSeconds(),
                        c.second().atSeconds(),
                        c.allowed()));
    }
}
