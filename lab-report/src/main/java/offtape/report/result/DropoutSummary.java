package offtape.report.result;

import offtape.core.unit.Quantity;

/**
 * How often the sound breaks off.
 *
 * @param searchedSeconds how long the tones are that were searched, on the channel with more; 0 if
 *     none could be
 * @param perMinute places a minute, one on both channels at once counted once
 * @param deepest greatest loss of all, dB
 * @param longest greatest length of all, ms
 */
public record DropoutSummary(
        double searchedSeconds, Quantity perMinute, Quantity deepest, Quantity longest) {}
