package offtape.report.result;

import com.fasterxml.jackson.annotation.JsonInclude;

/**
 * How far noise, and the interface, limit what one step of a ladder tells.
 *
 * @param k2BelowPercent where K2 does not stand out of the noise: K2 is below this with 95 %
 *     confidence; null if K2 is told or lies above the band
 * @param k3BelowPercent the same for K3
 * @param thdBelowPercent the same for all harmonics together
 * @param k3UncertaintyPercent expanded uncertainty of K3 from noise and from the interface's own
 *     K3, if that is known, k = 2, in percent of the fundamental; null if K3 is not told
 * @param replayUncertaintyDb expanded uncertainty of the replay level from noise, k = 2, dB
 * @param leftOut true if the step stands off the smooth curve of the others and was left out of it
 * @param limitedByInterface true if the interface's own harmonics, whose phase is not known, may
 *     move K2 or K3 by more than 10 % of its value
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record StepNoise(
        Double k2BelowPercent,
        Double k3BelowPercent,
        Double thdBelowPercent,
        Double k3UncertaintyPercent,
        Double replayUncertaintyDb,
        boolean leftOut,
        boolean limitedByInterface) {

    /** Of a step of which nothing is known of the interface. */
    public StepNoise(
            Double k2BelowPercent,
            Double k3BelowPercent,
            Double thdBelowPercent,
            Double k3UncertaintyPercent,
            Double replayUncertaintyDb,
            boolean leftOut) {
        this(
                k2BelowPercent,
                k3BelowPercent,
                thdBelowPercent,
                k3UncertaintyPercent,
                replayUncertaintyDb,
                leftOut,
                false);
    }

    /** Of a step that was not heard. */
    public static final StepNoise NOT_HEARD = new StepNoise(null, null, null, null, null, false);

    /** The same for a step that was left out of the curve. */
    public StepNoise asLeftOut() {
        return new StepNoise(
                k2BelowPercent,
                k3BelowPercent,
                thdBelowPercent,
                k3UncertaintyPercent,
                replayUncertaintyDb,
                true,
                limitedByInterface);
    }
}
