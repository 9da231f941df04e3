package offtape.core.machine.spec;

import static offtape.core.machine.spec.Limits.orElse;

/**
 * Amplifiers of the machine: members for both channels, and what differs on one of them. Edges that
 * are absent are not there at all.
 *
 * @param recordGainDb see {@link ChannelElectronicsSpec}; default 0
 * @param replayGainDb default 0
 * @param lowerEdgeHz default none
 * @param lowerOrder default 1
 * @param upperEdgeHz default none
 * @param upperOrder default 2
 * @param polarityInverted default false
 * @param secondHarmonicPercent default 0
 * @param thirdHarmonicPercent default 0
 * @param equalisation wrong time constants, both channels, or null
 * @param left what differs on the left, or null
 * @param right what differs on the right, or null
 */
public record ElectronicsSpec(
        Double recordGainDb,
        Double replayGainDb,
        Double lowerEdgeHz,
        Integer lowerOrder,
        Double upperEdgeHz,
        Integer upperOrder,
        Boolean polarityInverted,
        Double secondHarmonicPercent,
        Double thirdHarmonicPercent,
        EqualisationSpec equalisation,
        ChannelElectronicsSpec left,
        ChannelElectronicsSpec right) {

    /** Amplifiers that change nothing. */
    public static final ElectronicsSpec PERFECT =
            new ElectronicsSpec(
                    null, null, null, null, null, null, null, null, null, null, null, null);

    /** Checks the limits and fills in defaults. */
    public ElectronicsSpec {
        recordGainDb = orElse(recordGainDb, 0.0);
        replayGainDb = orElse(replayGainDb, 0.0);
        lowerOrder = orElse(lowerOrder, 1);
        upperOrder = orElse(upperOrder, 2);
        polarityInverted = orElse(polarityInverted, false);
        secondHarmonicPercent = orElse(secondHarmonicPercent, 0.0);
        thirdHarmonicPercent = orElse(thirdHarmonicPercent, 0.0);
        new ChannelElectronicsSpec(
                recordGainDb,
                replayGainDb,
                lowerEdgeHz,
                lowerOrder,
                upperEdgeHz,
                upperOrder,
                polarityInverted,
                secondHarmonicPercent,
                thirdHarmonicPercent);
    }

    /** The whole electronics of a channel, 0 left or 1 right; only edges may be null. */
    public ChannelElectronicsSpec channel(int index) {
        ChannelElectronicsSpec own = index == 0 ? left : right;
        if (own == null) {
            own = new ChannelElectronicsSpec(null, null, null, null, null, null, null, null, null);
        }
        return new ChannelElectronicsSpec(
                orElse(own.recordGainDb(), recordGainDb),
                orElse(own.replayGainDb(), replayGainDb),
                orElse(own.lowerEdgeHz(), lowerEdgeHz),
                orElse(own.lowerOrder(), lowerOrder),
                orElse(own.upperEdgeHz(), upperEdgeHz),
                orElse(own.upperOrder(), upperOrder),
                orElse(own.polarityInverted(), polarityInverted),
                orElse(own.secondHarmonicPercent(), secondHarmonicPercent),
                orElse(own.thirdHarmonicPercent(), thirdHarmonicPercent));
    }
}
