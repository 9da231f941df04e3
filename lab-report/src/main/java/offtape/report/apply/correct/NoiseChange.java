package offtape.report.apply.correct;

import offtape.core.unit.Quantity;

/**
 * What equalising after the tape does to the hiss of a channel. Before the tape the same filter
 * leaves the hiss as it is; so each change is also by how much the way before the tape is quieter
 * at the same level of the programme's middle.
 *
 * @param channel {@code left} or {@code right}
 * @param frequencyHz middles of third-octave bands, rising
 * @param levelDb noise in each as it is, dB re reference
 * @param afterDb noise in each behind the filter, dB re reference
 * @param unweighted dB, change of the unweighted noise
 * @param aWeighted dB, change of the A-weighted noise
 * @param itu468 dB, change of the noise with the weighting curve of ITU-R BS.468, as rms
 * @param unweightedAfter dB re reference, the unweighted noise behind the filter
 * @param aWeightedAfter dB re reference, the A-weighted noise behind the filter
 */
public record NoiseChange(
        String channel,
        double[] frequencyHz,
        double[] levelDb,
        double[] afterDb,
        Quantity unweighted,
        Quantity aWeighted,
        Quantity itu468,
        Quantity unweightedAfter,
        Quantity aWeightedAfter) {}
