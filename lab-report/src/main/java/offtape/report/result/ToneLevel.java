package offtape.report.result;

import offtape.core.unit.Quantity;

/**
 * Level of a tone on one channel.
 *
 * @param channel {@code left} or {@code right}
 * @param level dB re a full-scale sine, dropouts left out, noise taken out
 * @param relativeLevel dB re the reference tone on the same channel
 */
public record ToneLevel(String channel, Quantity level, Quantity relativeLevel) {}
