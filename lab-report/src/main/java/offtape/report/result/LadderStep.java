package offtape.report.result;

/**
 * One steady tone of a ladder.
 *
 * @param recordLevelDb level in the programme, dB re reference
 * @param replayLevelDb level of the fundamental in the return, dB re the returned reference tone,
 *     or null if the tone was not found
 * @param k2Percent second harmonic re fundamental, noise taken out, or null if above the band
 * @param k3Percent third harmonic re fundamental, noise taken out, or null if above the band
 * @param thdPercent harmonics 2 and up re fundamental, noise taken out, or null
 * @param compressionDb how far the replay level lies under the small-signal line
 * @param k3FloorPercent what the noise alone would read as K3, rms
 * @param limitedByNoise true if noise may move K3 by more than 1 % of its value (k = 2)
 */
public record LadderStep(
        double recordLevelDb,
        Double replayLevelDb,
        Double k2Percent,
        Double k3Percent,
        Double thdPercent,
        Double compressionDb,
        Double k3FloorPercent,
        boolean limitedByNoise) {

    private static final double STANDS_OUT = 4;

    /** Whether K3 stands clear of its floor, so that it can be drawn and interpolated. */
    public boolean k3StandsOut() {
        return k3Percent != null
                && k3Percent > 0
                && (k3FloorPercent == null || k3Percent > STANDS_OUT * k3FloorPercent);
    }
}
