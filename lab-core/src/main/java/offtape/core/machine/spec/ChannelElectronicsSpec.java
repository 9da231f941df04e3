package offtape.core.machine.spec;

import static offtape.core.machine.spec.Limits.within;
import static offtape.core.machine.spec.Limits.withinIfGiven;

/**
 * Amplifiers of one channel; what is absent is taken from the electronics' common members.
 *
 * @param recordGainDb gain ahead of the tape, −40 to 40 dB: it also drives the tape harder
 * @param replayGainDb gain after the tape, −40 to 40 dB
 * @param lowerEdgeHz −3 dB of a Butterworth high-pass, 1 to 1000 Hz
 * @param lowerOrder its order, 1 to 8
 * @param upperEdgeHz −3 dB of a Butterworth low-pass, 1000 to 90 000 Hz
 * @param upperOrder its order, 1 to 8
 * @param polarityInverted whether the channel comes back upside down
 * @param secondHarmonicPercent second harmonic that the record amplifier adds to a low tone that
 *     leaves it at reference level, 0 to 10 % of it
 * @param thirdHarmonicPercent the same of the third; less than 0.0001 % counts as none
 */
public record ChannelElectronicsSpec(
        Double recordGainDb,
        Double replayGainDb,
        Double lowerEdgeHz,
        Integer lowerOrder,
        Double upperEdgeHz,
        Integer upperOrder,
        Boolean polarityInverted,
        Double secondHarmonicPercent,
        Double thirdHarmonicPercent) {

    private static final double LEAST_PERCENT = 1e-4;

    /** Checks the limits. */
    public ChannelElectronicsSpec {
        withinIfGiven("recordGainDb", recordGainDb, -40, 40, "dB");
        withinIfGiven("replayGainDb", replayGainDb, -40, 40, "dB");
        withinIfGiven("lowerEdgeHz", lowerEdgeHz, 1, 1000, "Hz");
        withinIfGiven("upperEdgeHz", upperEdgeHz, 1000, 90_000, "Hz");
        if (lowerOrder != null) {
            within("lowerOrder", lowerOrder, 1, 8, "");
        }
        if (upperOrder != null) {
            within("upperOrder", upperOrder, 1, 8, "");
        }
        withinIfGiven("secondHarmonicPercent", secondHarmonicPercent, 0, 10, "%");
        withinIfGiven("thirdHarmonicPercent", thirdHarmonicPercent, 0, 10, "%");
        if (thirdHarmonicPercent != null && thirdHarmonicPercent < LEAST_PERCENT) {
            thirdHarmonicPercent = 0.0;
        }
    }
}
