package offtape.report.result;

import offtape.core.unit.Quantity;

/**
 * One part of the wavering of several replays as root mean square, percent.
 *
 * @param weightedRms weighted
 * @param unweightedRms 0.2 Hz to 200 Hz
 * @param wowRms 0.2 Hz to 6 Hz
 * @param flutterRms 6 Hz to 200 Hz
 */
public record PassParts(
        Quantity weightedRms, Quantity unweightedRms, Quantity wowRms, Quantity flutterRms) {

    /** Nothing is known of it, and why. */
    public static PassParts unknown(String reason) {
        Quantity q = Quantity.unknown(reason);
        return new PassParts(q, q, q, q);
    }
}
