package offtape.report.result;

import offtape.core.unit.Quantity;

/**
 * The ten seconds of the tone that hold the highest weighted reading; of all that do, those of the
 * highest weighted rms.
 *
 * @param fromSeconds where they begin, from the start of the tone
 * @param weightedPeak highest weighted quasi-peak reading in them
 * @param weightedRms their weighted root mean square
 */
public record WorstTenSeconds(double fromSeconds, Quantity weightedPeak, Quantity weightedRms) {}
