package offtape.core.machine.spec;

import static offtape.core.machine.spec.Limits.orElse;
import static offtape.core.machine.spec.Limits.within;

/**
 * What the tape holds before the programme: a steady tone that ends one second before it.
 *
 * @param frequencyHz 20 to 20 000 Hz; default 440
 * @param levelDb level re reference, −60 to 10 dB; default −10
 */
public record LeadInSpec(Double frequencyHz, Double levelDb) {

    /** Pause between the lead-in and the programme, in seconds. */
    public static final double PAUSE_SECONDS = 1;

    /** Checks the limits and fills in defaults. */
    public LeadInSpec {
        frequencyHz = within("frequencyHz", orElse(frequencyHz, 440.0), 20, 20_000, "Hz");
        levelDb = within("levelDb", orElse(levelDb, -10.0), -60, 10, "dB");
    }
}
