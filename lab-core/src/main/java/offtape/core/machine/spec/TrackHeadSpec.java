package offtape.core.machine.spec;

import static offtape.core.machine.spec.Limits.withinIfGiven;

/**
 * What differs at the head of one track: dirt and wear need not spread evenly over a head.
 *
 * @param gapMicrometres length of the replay gap, 0 to 30 µm, or null if it does not differ
 * @param spacingLossMicrometres distance between head and tape, 0 to 30 µm, or null
 */
public record TrackHeadSpec(Double gapMicrometres, Double spacingLossMicrometres) {

    /** Nothing differs. */
    static final TrackHeadSpec SAME = new TrackHeadSpec(null, null);

    /** Checks the limits. */
    public TrackHeadSpec {
        withinIfGiven("gapMicrometres", gapMicrometres, 0, 30, "µm");
        withinIfGiven("spacingLossMicrometres", spacingLossMicrometres, 0, 30, "µm");
    }
}
