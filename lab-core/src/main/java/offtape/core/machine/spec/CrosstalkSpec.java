package offtape.core.machine.spec;

import static offtape.core.machine.spec.Limits.withinIfGiven;

/**
 * Leakage between the tracks at the replay head, the same at all frequencies.
 *
 * @param leftToRightDb the left track in the right channel, −160 to 0 dB, or null for none
 * @param rightToLeftDb the right track in the left channel, −160 to 0 dB, or null for none
 */
public record CrosstalkSpec(Double leftToRightDb, Double rightToLeftDb) {

    /** No leakage. */
    public static final CrosstalkSpec NONE = new CrosstalkSpec(null, null);

    /** Checks the limits. */
    public CrosstalkSpec {
        withinIfGiven("leftToRightDb", leftToRightDb, -160, 0, "dB");
        withinIfGiven("rightToLeftDb", rightToLeftDb, -160, 0, "dB");
    }
}
