package offtape.core.machine.spec;

import static offtape.core.machine.spec.Limits.given;
import static offtape.core.machine.spec.Limits.within;

/**
 * A tape of one time constant replayed with another: a shelf of magnitude √((1 + (ωτr)²)/(1 +
 * (ωτt)²)) with τt of the tape and τr of the replay amplifier (IEC 60094-1).
 *
 * @param tapeMicroseconds 10 to 300 µs
 * @param replayMicroseconds 10 to 300 µs
 */
public record EqualisationSpec(Double tapeMicroseconds, Double replayMicroseconds) {

    /** Checks the limits. */
    public EqualisationSpec {
        given("tapeMicroseconds", tapeMicroseconds);
        given("replayMicroseconds", replayMicroseconds);
        within("tapeMicroseconds", tapeMicroseconds, 10, 300, "µs");
        within("replayMicroseconds", replayMicroseconds, 10, 300, "µs");
    }
}
