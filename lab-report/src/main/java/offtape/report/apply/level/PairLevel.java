package offtape.report.apply.level;

import offtape.core.unit.Quantity;

/**
 * A level for both channels together: that of the channel which gets there first.
 *
 * @param what {@code k3}, or {@code compression}
 * @param value percent of K3, or dB of compression
 * @param recordLevel dB re reference
 * @param peaksDbfs the same as a tone's peak, dB re a full-scale sine
 * @param channel the channel that gets there first, or null if it is not known
 */
public record PairLevel(
        String what, double value, Quantity recordLevel, Quantity peaksDbfs, String channel) {

    /** The value of {@code what} for distortion. */
    public static final String K3 = "k3";

    /** The value of {@code what} for compression. */
    public static final String COMPRESSION = "compression";
}
