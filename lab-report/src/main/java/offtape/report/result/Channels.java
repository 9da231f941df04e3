package offtape.report.result;

import offtape.core.unit.Quantity;

/**
 * How the two channels compare.
 *
 * @param balance dB, right re left
 * @param crosstalkLeftToRight dB at 1 kHz, re the right channel's reference
 * @param crosstalkRightToLeft dB at 1 kHz, re the left channel's reference
 * @param interchannelDelay µs, positive if the right channel is late
 * @param azimuth arc minutes, positive if the right channel is late
 * @param monoLossAt10kHz dB lost at 10 kHz when the channels are summed, 0 or more
 */
public record Channels(
        Quantity balance,
        Quantity crosstalkLeftToRight,
        Quantity crosstalkRightToLeft,
        Quantity interchannelDelay,
        Quantity azimuth,
        Quantity monoLossAt10kHz) {}
