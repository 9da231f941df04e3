package offtape.core.machine.spec;

import static offtape.core.machine.spec.Limits.within;
import static offtape.core.machine.spec.Limits.withinIfGiven;

/**
 * Bias of the recording re the level at which it was set for this tape.
 *
 * @param overDb −4 to 6 dB, + is more bias; default 0
 * @param leftDb the same on the left where it differs, or null
 * @param rightDb the same on the right where it differs, or null
 */
public record BiasSpec(double overDb, Double leftDb, Double rightDb) {

    /** Bias as it was set. */
    public static final BiasSpec AS_SET = new BiasSpec(0, null, null);

    private static final double LEAST_DB = -4;
    private static final double MOST_DB = 6;

    /** Checks the limits. */
    public BiasSpec {
        within("overDb", overDb, LEAST_DB, MOST_DB, "dB");
        withinIfGiven("leftDb", leftDb, LEAST_DB, MOST_DB, "dB");
        withinIfGiven("rightDb", rightDb, LEAST_DB, MOST_DB, "dB");
    }

    /** Bias of a channel, 0 left or 1 right, re that set, dB. */
    public double channelDb(int index) {
        Double own = index == 0 ? leftDb : rightDb;
        return own == null ? overDb : own;
    }
}
