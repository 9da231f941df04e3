package offtape.report.result;

import offtape.core.unit.Quantity;

/**
 * The ten seconds of the tone whose weighted rms is highest.
 *
 * @param fromSeconds where they begin, from the start of the tone
 * @param weightedPeak highest weighted quasi-peak reading in them
 * @param weightedRms their weighted root mean square
 */
public record WorstTenSeconds(double fromSeconds, Quantity weightedPeak, Quantity weightedRms) {}
