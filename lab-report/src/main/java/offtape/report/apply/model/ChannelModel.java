package offtape.report.apply.model;

/**
 * One channel of a machine.
 *
 * @param name {@code left} or {@code right}
 * @param levelDb response to small tones on {@link LogGrid}, 0 dB at 1 kHz
 * @param phase its phase there, radians, without the delay common to both channels
 * @param gainDb gain at 1 kHz, dB
 * @param referenceDb level at which the reference tone returns re that at which it is sent, dB
 * @param opposite whether it is turned over against the left channel
 * @param lateSeconds how much later than the mean of both channels it comes
 * @param bent curve and emphasis
 */
record ChannelModel(
        String name,
        double[] levelDb,
        double[] phase,
        double gainDb,
        double referenceDb,
        boolean opposite,
        double lateSeconds,
        BentModel bent) {

    /** Whole gain at a frequency, a ratio. */
    double gain(double hz) {
        return Math.pow(10, (gainDb + LogGrid.at(levelDb, hz)) / 20);
    }

    /** Whole phase at a frequency, radians. */
    double phaseAt(double hz) {
        double turn = opposite ? Math.PI : 0;
        return turn + LogGrid.at(phase, hz) - 2 * Math.PI * hz * lateSeconds;
    }

    /** The same channel less a delay. */
    ChannelModel earlier(double seconds) {
        double[] turned = phase.clone();
        for (int i = 0; i < turned.length; i++) {
            turned[i] += 2 * Math.PI * LogGrid.hz(i) * seconds;
        }
        return new ChannelModel(
                name, levelDb, turned, gainDb, referenceDb, opposite, lateSeconds, bent);
    }
}
