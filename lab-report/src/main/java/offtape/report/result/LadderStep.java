package offtape.report.result;

import com.fasterxml.jackson.annotation.JsonUnwrapped;

/**
 * One steady tone of a ladder.
 *
 * @param recordLevelDb level in the programme, dB re reference
 * @param replayLevelDb level of the fundamental in the return, dB re the returned reference tone,
 *     or null if the tone was not found
 * @param k2Percent second harmonic re fundamental, noise taken out, or null if it lies above the
 *     band or does not stand out of the noise
 * @param k3Percent third harmonic, likewise
 * @param thdPercent harmonics 2 and up re fundamental, likewise
 * @param compressionDb how far the replay level lies under the small-signal line
 * @param k3FloorPercent what the noise alone would read as K3, rms
 * @param limitedByNoise true if noise may move K3 by more than 1 % of its value (k = 2)
 * @param noise how far noise limits these figures
 */
public record LadderStep(
        double recordLevelDb,
        Double replayLevelDb,
        Double k2Percent,
        Double k3Percent,
        Double thdPercent,
        Double compressionDb,
        Double k3FloorPercent,
        boolean limitedByNoise,
        @JsonUnwrapped StepNoise noise) {

    private static final double STANDS_OUT = 4;

    /** Whether K3 stands clear of its floor, so that it can be drawn and fitted. */
    public boolean k3StandsOut() {
        return k3Percent != null
                && k3Percent > 0
                && (k3FloorPercent == null || k3Percent > STANDS_OUT * k3FloorPercent);
    }

    /** The same step with its compression in dB. */
    public LadderStep compressedBy(double db) {
        return new LadderStep(
                recordLevelDb,
                replayLevelDb,
                k2Percent,
                k3Percent,
                thdPercent,
                db,
                k3FloorPercent,
                limitedByNoise,
                noise);
    }

    /** The same step, marked as left out of the curve. */
    public LadderStep asLeftOut() {
        return withNoise(noise.asLeftOut());
    }

    /** The same step, otherwise limited. */
    public LadderStep withNoise(StepNoise other) {
        return new LadderStep(
                recordLevelDb,
                replayLevelDb,
                k2Percent,
                k3Percent,
                thdPercent,
                compressionDb,
                k3FloorPercent,
                limitedByNoise,
                other);
    }
}
