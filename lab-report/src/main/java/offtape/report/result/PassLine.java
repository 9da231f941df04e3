package offtape.report.result;

import offtape.core.unit.Quantity;

/**
 * A line of the deviation of several replays in its two parts.
 *
 * @param frequencyHz its rate; of one that moves, in the middle of the tone
 * @param writtenPeak peak deviation that repeats with the tape, percent
 * @param readPeak peak deviation that falls into another phase with each replay, percent
 */
public record PassLine(double frequencyHz, Quantity writtenPeak, Quantity readPeak) {}
